import type { Mark, Spot } from './mark.ts';

/** Length of an arrowhead, mm: filled, 20 degrees wide (ISO 129-1, Annex A). */
export const arrowLength = 2.5;

/** A filled arrowhead whose tip is at `tip`, pointing away from `from`. */
export function arrowhead(tip: Spot, from: Spot): Mark {
  const [dx, dy] = [tip[0] - from[0], tip[1] - from[1]];
  const size = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / size, dy / size];
  const half = arrowLength * Math.tan((10 * Math.PI) / 180);
  const foot: Spot = [tip[0] - ux * arrowLength, tip[1] - uy * arrowLength];
  const ring: readonly Spot[] = [
    tip,
    [foot[0] - uy * half, foot[1] + ux * half],
    [foot[0] + uy * half, foot[1] - ux * half],
  ];
  return { kind: 'polygon', rings: [ring], fill: 'ink', pen: 'dimension', role: 'arrow' };
}

/** A dot where there is no room for an arrowhead. */
export function terminalDot(centre: Spot): Mark {
  return { kind: 'circle', centre, radius: 0.45, fill: 'ink', pen: 'dimension', role: 'arrow' };
}
