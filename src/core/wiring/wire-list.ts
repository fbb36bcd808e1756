import type { Vector } from '../geometry/shapes.ts';
import { length, type Sentence, say } from '../units/say.ts';
import { plugTag } from './bench-joints.ts';
import { busPieces } from './bus-pieces.ts';
import { districtName } from './districts.ts';
import type { Feeder } from './feeders.ts';
import type { WiringInput } from './input.ts';
import type { LaidUnit } from './laid-unit.ts';
import type { Net } from './nets.ts';
import { type BusSpot, passing, pointAlong, spotAt, stretchPath } from './routing/limbs.ts';
import { CLIPPED, type Tap } from './routing/tap.ts';
import { placeSaid, sameSpot, type Tee, teesOf } from './tees.ts';
import { throwerBefore } from './thrower.ts';
import { outward } from './under.ts';
import { unitTag } from './units.ts';
import { BUS_SLACK, colours, cut, FROG_COLOUR, LEAD_LOOP, type Pair, TAIL_SLACK, type Wire } from './wire.ts';
import type { Wired, WiredFrog, WiredLoad } from './wired.ts';

/** Every wire of the layout, in pairs numbered in the order they are laid. */
export function wireList(wired: Wired): readonly Wire[] {
  const { input } = wired;
  const { bus, feeders } = input;
  if (bus === null) return [];
  const thin = feeders?.stock.id ?? bus.stock.id;
  const buses = wired.nets.flatMap((net) => busPairs(wired, net, bus.stock.id));
  const numbers = new Map(buses.map(({ id }, i) => [id, i + 1]));
  const named = { wired, numbers, tees: teesOf(wired) };
  const pairs: readonly Pair[] = [
    ...buses.map((pair) => ({ ...pair, ...startOf(named, pair) })),
    ...wired.units.flatMap((unit) => unitPairs(named, unit, bus.stock.id)),
    ...wired.feeders.flatMap((feeder) => feederPair(named, feeder, thin)),
    ...wired.loads.flatMap((load) => loadPair(named, load, thin)),
    ...wired.frogs.flatMap((frog) => frogPair(named, frog, thin)),
  ];
  const own = (stock: string) => [bus.stock, feeders?.stock].find((one) => one?.id === stock)?.colours ?? null;
  const both = pairs.flatMap((pair, i) =>
    wiresOf(pair, i + 1, (pair.use === 'rails' ? own(pair.stock) : null) ?? colours(pair.use)),
  );
  const frogs = wired.frogs.map((one, i) => frogWire(wired, one, { stock: thin, number: pairs.length + 1 + i }));
  return [...both, ...frogs];
}

/** The wiring with the numbers of the bus pairs by their ids, and its T-joints. */
type Named = {
  readonly wired: Wired;
  readonly numbers: ReadonlyMap<string, number>;
  readonly tees: readonly Tee[];
};

function wiresOf(pair: Pair, number: number, [first, second]: readonly [string, string]): readonly Wire[] {
  return [
    { ...pair, id: `${pair.id}-a`, label: `${number}a`, colour: first },
    { ...pair, id: `${pair.id}-b`, label: `${number}b`, colour: second },
  ];
}

/** The lengths of bus of one pair of its own, from the supply or its unit on. */
function busPairs(wired: Wired, net: Net, stock: string): readonly Pair[] {
  const { input, joints, limbs, under, z } = wired;
  const name = ownerName(wired, net);
  return busPieces(net, joints).map((piece) => ({
    ...{ id: piece.id, kind: 'bus', stock, district: net.district, net: net.id, use: 'rails' },
    ...{ from: [], on: null, along: piece.from },
    to:
      piece.ends === null
        ? [...saidAt(wired, { limb: piece.limb, along: piece.to }), `, where it ends, ${name}`]
        : say`plug ${plugTag(piece.ends)}`,
    ...cut(
      stretchPath(limbs, piece).map((point) => outward(under, point, z)),
      BUS_SLACK,
      input.show,
    ),
  }));
}

/** A place on the bus in words. */
function saidAt({ input, limbs, under }: Wired, { along, limb }: BusSpot): Sentence {
  const own = limbs[limb];
  return own === undefined ? [] : placeSaid(under, input.ground.benches, pointAlong(own, along));
}

/** What a pair of its own is called: its district, or the tag of its unit. */
function ownerName({ input, units }: Pick<Wired, 'input' | 'units'>, { district, unit }: Net): string {
  return unit === null ? districtName(input, district) : unitTag(units, unit);
}

/** Where an end of a pair is, in words, and the pair of bus that it is joined to there. */
type Join = { readonly from: Sentence; readonly on: string | null };

/** Where a length of bus begins: at the supply, at its unit, at a plug, or at a T-joint. */
function startOf({ wired, numbers, tees }: Named, { id, net: own }: Pair): Join {
  const { joints, limbs, nets } = wired;
  const net = nets.find((one) => one.id === own);
  const pieces = net === undefined ? [] : busPieces(net, joints);
  const piece = pieces.find((one) => one.id === id);
  if (net === undefined || piece === undefined) return { from: say`supply`, on: null };
  if (piece.begins !== null) {
    const before = pieces.find(({ ends }) => ends === piece.begins);
    return { from: say`plug ${plugTag(piece.begins)}`, on: before?.id ?? null };
  }
  const start = spotAt(limbs, { limb: piece.limb, along: piece.from });
  const parent = passing(
    pieces.filter((one) => one !== piece),
    start,
  );
  if (parent !== null) {
    const tag = tees.find(({ spot }) => sameSpot(spot, start))?.tag ?? '';
    const from = say`T-joint ${tag} on pair ${String(numbers.get(parent.id) ?? 0)}, `;
    return { from: [...from, ...saidAt(wired, start)], on: parent.id };
  }
  if (net.unit === null) return { from: say`supply`, on: null };
  const source = spotAt(limbs, net.source);
  // a pair that is fed somewhere on its way begins at a feeder
  const fed = source.limb === start.limb && Math.abs(source.along - start.along) < 1e-5;
  return {
    from: fed ? say`${unitTag(wired.units, net.unit)}` : [...saidAt(wired, start), ', where it begins'],
    on: null,
  };
}

/** The pair that passes a place for a net, by its number; the unit itself where all hangs at one place. */
function pairAt({ wired, numbers }: Named, id: string, spot: BusSpot): Join {
  const net = wired.nets.find((one) => one.id === id);
  const piece = net === undefined ? null : passing(busPieces(net, wired.joints), spot);
  if (net === undefined || piece === null) return { from: say`${unitTag(wired.units, id)}`, on: null };
  const from = say`pair ${String(numbers.get(piece.id) ?? 0)}, ${ownerName(wired, net)}`;
  return { from, on: piece.id };
}

/** From a tap along the deck's underside to where its wires go up. */
export function tailPath({ under, z }: Pick<Wired, 'under' | 'z'>, { at, way }: Tap): readonly Vector[] {
  const level = under.underside - CLIPPED;
  return [outward(under, at, z), ...way.map((point) => outward(under, point, level))];
}

/** The same, up through the deck and on over it. */
export function upPath(wired: Pick<Wired, 'under' | 'z'>, tap: Tap, { down, over }: Pick<Feeder, 'down' | 'over'>) {
  const { deckTop } = wired.under.bench;
  return [...tailPath(wired, tap), ...[down, ...over].map(([x, y]): Vector => [x, y, deckTop])];
}

function feederPair(named: Named, feeder: Feeder, stock: string): readonly Pair[] {
  const { wired } = named;
  const tap = wired.taps.get(feeder.id);
  if (tap === undefined) return [];
  const { at, district, id, lead, line, net, side } = feeder;
  const slack = lead ? { ...TAIL_SLACK, ends: TAIL_SLACK.ends + LEAD_LOOP } : TAIL_SLACK;
  return [
    {
      ...{ id, kind: lead ? 'lead' : 'feeder', stock, district, net, use: 'rails', along: tap.along },
      ...pairAt(named, net, tap),
      to: say`${line} at ${length(at)}, a to the ${side} rail`,
      ...plugged(wired.input, feeder),
      ...cut(upPath(wired, tap, feeder), slack, wired.input.show),
    },
  ];
}

/** A lead parts at its plug under the deck, below the span's hinge, and folds with the span. */
function plugged({ lifts }: WiringInput, { lead, line, through }: Feeder): Pick<Wire, 'note'> {
  const span = lead ? lifts.find(({ id }) => id === through) : undefined;
  if (span === undefined) return {};
  return { note: say`its plug is under the deck, at the hinge of ${span.id}, ${line} at ${length(span.from)}` };
}

function loadPair(named: Named, load: WiredLoad, stock: string): readonly Pair[] {
  const { wired } = named;
  const tap = wired.taps.get(load.drop);
  if (tap === undefined) return [];
  const { district, id, turnout } = load;
  // a turnout's motor hangs under the deck
  const path = turnout ? tailPath(wired, tap) : upPath(wired, tap, load);
  return [
    {
      ...{ id, kind: 'load', stock, district, net: district, use: turnout ? 'turnout' : 'other', along: tap.along },
      ...pairAt(named, district, tap),
      to: say`${id}${throwerBefore(wired.input, id)}`,
      ...cut(path, TAIL_SLACK, wired.input.show),
    },
  ];
}

/** From the bus to a unit, and from the unit back to the pair that it feeds. */
function unitPairs(named: Named, unit: LaidUnit, stock: string): readonly Pair[] {
  const { wired } = named;
  const { district, from, id, place, tap } = unit;
  const path = [...tailPath(wired, tap).slice(0, -1), place];
  const { along } = tap;
  const fed = pairAt(named, id, tap);
  const tag = unitTag(wired.units, id);
  const both = {
    kind: 'unit',
    stock,
    district,
    use: 'rails',
    along,
    ...cut(path, TAIL_SLACK, wired.input.show),
  } as const;
  return [
    { id: `${id}-in`, net: from, ...pairAt(named, from, tap), to: say`in of ${tag}`, ...both },
    { id: `${id}-out`, net: id, from: say`out of ${tag}`, to: fed.from, on: fed.on, ...both },
  ];
}

/** From the bus to the switch beside a turnout's motor. */
function frogPair(named: Named, { district, drop, turnout }: WiredFrog, stock: string): readonly Pair[] {
  const { wired } = named;
  const tap = wired.taps.get(drop);
  if (tap === undefined) return [];
  return [
    {
      ...{ id: drop, kind: 'frog', stock, district, net: district, use: 'rails', along: tap.along },
      ...pairAt(named, district, tap),
      to: say`switch at ${turnout}`,
      ...cut(tailPath(wired, tap), TAIL_SLACK, wired.input.show),
    },
  ];
}

/** From that switch up to the frog. */
function frogWire(
  { input, under }: Wired,
  { at, district, down, turnout }: WiredFrog,
  { stock, number }: { readonly stock: string; readonly number: number },
): Wire {
  const { deckTop } = under.bench;
  const beside: readonly Vector[] = down === at ? [] : [[at[0], at[1], deckTop]];
  const path: readonly Vector[] = [
    [down[0], down[1], under.underside - CLIPPED],
    [down[0], down[1], deckTop],
    ...beside,
  ];
  return {
    ...{
      id: `frog-${turnout}`,
      label: `${number}f`,
      kind: 'frog',
      use: 'rails',
      stock,
      colour: FROG_COLOUR,
      district,
      net: district,
      on: null,
      along: 0,
    },
    from: say`switch at ${turnout}`,
    to: say`frog of ${turnout}`,
    ...cut(path, { share: 0, ends: 200 }, input.show),
  };
}
