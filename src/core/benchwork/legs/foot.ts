import { tidy } from '../machining.ts';
import type { Span } from './corners.ts';
import { LEDGE, type LegFigures } from './figures.ts';
import { type PadFigures, plateMiddle } from './pad.ts';
import { plateOf, standHeight, standHoles } from './stand.ts';

/** A foot that stands on a pad: its leg, what sets it apart from the leg's other feet, and where it stands. */
export type Foot = {
  readonly id: string;
  readonly name?: string;
  /** of its pad's two layers */
  readonly labels: readonly [string, string];
  readonly u: Span;
  readonly v: Span;
};

/** `leg.left-back`: which of a bench's four feet it is, whether its leg has one or two. */
export function footKey({ id, name = '' }: Pick<Foot, 'id' | 'name'>): string {
  return name === '' ? id : `${id}-${name}`;
}

/** The pad under a post or upright: as wide, and a ledge deeper. */
export function padUnder(legs: LegFigures, { id, name = '', labels, u, v }: Foot): PadFigures {
  const { stand } = legs.input;
  const key = footKey({ id, name });
  const plate = plateOf(stand, key);
  const deep = Math.max(tidy(v[1] - v[0] + LEDGE), plate[1]);
  const bare: PadFigures = {
    leg: id,
    name,
    material: legs.input.material,
    u,
    v: [v[0], tidy(v[0] + deep)],
    low: standHeight(stand, key),
    t: legs.t,
    label: labels,
    holes: [],
    hole: 0,
  };
  const holes = standHoles(legs, key, footMiddle(legs, { id: key, u, v, pad: bare }));
  return { ...bare, holes: holes.at, hole: holes.diameter };
}

type Under = Pick<Foot, 'id' | 'u' | 'v'> & { readonly pad: Pick<PadFigures, 'u' | 'v'> };

/** Where a caster's or foot's middle comes under a pad, from the left and inward; mm. */
export function footMiddle({ input }: LegFigures, { id, u, v, pad }: Under): readonly [number, number] {
  const [a, b] = plateOf(input.stand, id);
  return [plateMiddle(pad.u, u, a), plateMiddle(pad.v, v, b)];
}
