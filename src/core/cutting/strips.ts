import { exact } from './tick.ts';

/** How many strips of one width a piece gives, and what is left beside them, mm. */
export type Strips = { readonly count: number; readonly left: number };

/**
 * Strips of width `strip` out of `width` with a kerf between neighbours: n = floor((W + k) / (w + k)), since n strips
 * need n - 1 kerfs. `left` is what remains after the last strip, without the kerf that frees it when there is room for
 * one. Common practice, no source. mm; a width that is no size gives no strips.
 */
export function stripsIn(width: number, strip: number, kerf: number): Strips {
  const real = [width, strip, kerf].every(Number.isFinite) && strip > 0 && kerf >= 0 && width >= 0;
  if (!real) return { count: 0, left: 0 };
  const count = Math.floor((width + kerf) / (strip + kerf) + 1e-9);
  return { count, left: exact(Math.max(0, width - count * (strip + kerf))) };
}

/**
 * Strips when the piece is first cut into sections (by a yard, say) and the strips are ripped from each. Sections are
 * cut with the same kerf, the last one is what is left. mm.
 */
export function stripsBySections(
  width: number,
  section: number,
  cut: { readonly strip: number; readonly kerf: number },
): Strips {
  const whole = stripsIn(width, section, cut.kerf);
  const each = stripsIn(section, cut.strip, cut.kerf);
  const last = stripsIn(whole.left, cut.strip, cut.kerf);
  return { count: whole.count * each.count + last.count, left: last.left };
}
