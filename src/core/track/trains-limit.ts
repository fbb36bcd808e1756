import { gaugeOf, scaleFigures } from './scale.ts';
import type { Train } from './train.schema.ts';

/** Which school sets a smallest radius. */
export type RadiusSchool = 'car-lengths' | 'nem-111';

/** The radius a vehicle asks for, mm, and who says so. */
export type RadiusLimit = { readonly radius: number; readonly train: Train; readonly source: string };

/** NEM 111 (2016): smallest radius in gauges for vehicle groups A, B, C; absolutely, and for main lines. As quoted. */
const NEM_111 = { absolute: [22, 25, 30], main: [35, 40, 45] } as const;

/** Bodies of groups A and B in the prototype, mm (NEM 103); C is longer. */
const GROUPS = [20_000, 24_200] as const;

/** Attack angle of 12 degrees at most (NEM 111): radius at least so many times the rigid wheelbase. */
const WHEELBASES = 1 / (2 * Math.sin((12 * Math.PI) / 180));

/** Radius over the longest vehicle's length: 3 runs reliably; common practice, no source. */
const CAR_LENGTHS = 3;

/** NEM 103's bodies in 0 follow 1:43.5, not the scale's 1:45. */
const O_BODIES = 43.5;

/** The group of a vehicle by its body: 0 for A, 1 for B, 2 for C and longer; limits in whole mm as NEM 103 prints them. */
export function vehicleGroup(train: Pick<Train, 'body'>, scale: string): 0 | 1 | 2 {
  const { nem, ratio, gauge } = scaleFigures(scale);
  const by = gauge === 32 ? O_BODIES : (nem ?? ratio);
  const [a, b] = [Math.round(GROUPS[0] / by), Math.round(GROUPS[1] / by)];
  return train.body <= a ? 0 : train.body <= b ? 1 : 2;
}

/** Below this a vehicle does not go round at all: NEM 111's absolute limit or its rigid wheelbase; mm. */
export function absoluteRadius(train: Train, scale: string): RadiusLimit {
  const rigid = WHEELBASES * train.wheelbase;
  const listed = NEM_111.absolute[vehicleGroup(train, scale)] * gaugeOf(scale);
  return rigid > listed
    ? { radius: rigid, train, source: 'NEM 111, attack angle of 12 degrees' }
    : { radius: listed, train, source: 'NEM 111, absolute limit of its vehicle group, as quoted' };
}

/** The radius with which a vehicle runs reliably, by the chosen school; mm. */
export function reliableRadius(train: Train, scale: string, school: RadiusSchool): RadiusLimit {
  if (school === 'car-lengths') {
    return {
      radius: CAR_LENGTHS * train.length,
      train,
      source: 'common practice, no source: 3 times the longest vehicle',
    };
  }
  const radius = NEM_111.main[vehicleGroup(train, scale)] * gaugeOf(scale);
  return { radius, train, source: 'NEM 111, main line of its vehicle group, as quoted' };
}

/** The strictest of several limits; null without trains. */
export function strictest(limits: readonly RadiusLimit[]): RadiusLimit | null {
  return limits.reduce<RadiusLimit | null>(
    (most, limit) => (most === null || limit.radius > most.radius ? limit : most),
    null,
  );
}
