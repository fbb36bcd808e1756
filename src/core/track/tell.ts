import type { Finding } from '../finding.ts';

/** Everything of a finding but its chapter and acceptance. */
type Told = Omit<Finding, 'chapter' | 'accepted'>;

/** A finding of the track chapter. */
export function tell(told: Told): Finding {
  return { ...told, chapter: 'track', accepted: null };
}

/** A ratio as per cent with at most two decimals. */
export function percent(ratio: number): string {
  return `${Math.round(ratio * 10000) / 100 || 0} %`;
}

/** An angle as degrees with at most two decimals. */
export function degrees(angle: number): string {
  return `${Math.round((angle * 18000) / Math.PI) / 100 || 0}°`;
}
