import type { Point } from '../geometry/shapes.ts';
import { alongPath, insideLoop, nearestOnPath } from './distance.ts';
import type { Bank, Form, Hill, Ridge } from './land.ts';

/**
 * Ground that is not there counts as this far under the deck: forms run on below the deck so that a contour crosses
 * the foot at a slope and is found exactly. mm.
 */
export const BELOW = 20;

/** Height of the highest form at a point, never under -BELOW; forms run on below the deck. mm. */
export function reliefAt(forms: readonly Form[], x: number, y: number): number {
  let height = -BELOW;
  for (const form of forms) height = Math.max(height, formAt(form, x, y));
  return height;
}

/** Height of one form at a point; forms run on below the deck. mm. */
export function formAt(form: Form, x: number, y: number): number {
  if (form.kind === 'hill') return hillAt(form, x, y);
  return form.kind === 'ridge' ? ridgeAt(form, [x, y]) : bankAt(form, [x, y]);
}

/** Paraboloid h (1 - r2 / R2), cone h (1 - r / R): plane geometry. */
function hillAt(hill: Hill, x: number, y: number): number {
  const [dx, dy] = [x - hill.top[0], y - hill.top[1]];
  const share = (dx * dx + dy * dy) / (hill.footRadius * hill.footRadius);
  return hill.height * (1 - (hill.form === 'dome' ? share : Math.sqrt(share)));
}

function ridgeAt(ridge: Ridge, p: Point): number {
  const share = nearestOnPath(ridge.along, p).distance / ridge.half;
  return ridge.height * (1 - (ridge.form === 'round' ? share * share : share));
}

function bankAt(bank: Bank, p: Point): number {
  if (insideLoop(bank.outline, p)) return bank.height;
  return bank.height - bank.slope * nearestOnPath(alongPath(bank.outline), p).distance;
}
