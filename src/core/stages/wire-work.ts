import type { Plan } from '../plan.ts';
import { TRACK_LAID } from '../steps/generated/laying.ts';
import type { PairWork, WireWork } from '../steps/generated/wires.ts';
import { length, type Sentence, say } from '../units/say.ts';
import { type Gap, gapTag } from '../wiring/gap.ts';
import { holeTag } from '../wiring/holes.ts';
import { CLIP_EVERY } from '../wiring/small-parts.ts';
import { UNIT_NAMES, unitTag } from '../wiring/units.ts';
import { pairNumber, type Wire } from '../wiring/wire.ts';
import type { WiringModel } from '../wiring/wiring.ts';

/** The wiring as its steps need it. */
export function wireWork(plan: Plan, wiring: WiringModel, benches: readonly string[]): WireWork {
  const pairs = wiring.wires.filter(({ label }) => !label.endsWith('b'));
  const isDead = ({ id }: { readonly id: string }) => id.startsWith('cut.') || id.startsWith('feeder.');
  const rows = (all: WiringModel['tests']) => all.map(({ what, expect }) => [...what, ' ', ...expect]);
  return {
    bus: pairs.filter(({ kind }) => kind === 'bus').map((wire) => pairOf(plan, wire, wiring.wires)),
    tails: pairs.filter(({ kind }) => kind !== 'bus').map((wire) => pairOf(plan, wire, wiring.wires)),
    units: wiring.units.map(({ bench, id, kind, line, of, onBench }) => ({
      ...{ id: unitTag(wiring.units, id), what: UNIT_NAMES[kind] },
      for: kind === 'bridge-switch' ? `the approaches of ${of}` : `the section of ${line} that reverses`,
      at: onBench,
      bench,
    })),
    clipEvery: CLIP_EVERY[plan.head.show],
    holes: wiring.holes.map(({ diameter, id, part }) => ({ tag: holeTag(id), part, diameter })),
    deckHoles: wiring.deckHoles.flatMap(({ at, diameter, label, part }) =>
      at === null || part === null ? [] : [{ label, part, at, diameter }],
    ),
    cuts: wiring.gaps.map(({ id, line, at, rails }) => ({ tag: gapTag(id), line, at, rails })),
    apart: cutTests(wiring),
    dead: deadTests(wiring),
    live: rows(wiring.tests.filter((test) => !isDead(test))),
    supply: { volts: wiring.volts, tripsAt: wiring.tripsAt },
    before: {
      benchwork: benches.map((id) => `benchwork.${id}-seal`),
      track: [...(plan.track?.steps ?? []).map(({ id }) => `track.${id}`), ...TRACK_LAID],
    },
  };
}

/** The tests of cuts, each way of measuring said once with the places where it is done. */
function cutTests({ gaps }: WiringModel): readonly Sentence[] {
  const cuts = (rails: Gap['rails']) =>
    placed(
      gaps.filter((gap) => gap.rails === rails),
      ({ id }) => `${gapTag(id)}, `,
    );
  const [both, frog] = [cuts('both'), cuts('frog')];
  return [
    ...(both.length === 0 ? [] : [say`Along each rail across a cut: no connection in either rail.`, both]),
    ...(frog.length === 0 ? [] : [say`Along the frog's rail across its cut: no connection.`, frog]),
  ];
}

/** The tests without power, each way of measuring said once with the places where it is done. */
function deadTests({ feeders, wires }: WiringModel): readonly Sentence[] {
  const fed = placed(feeders, ({ id }) => `${pairNumber(wires, id)}, `);
  return [
    ...(fed.length === 0
      ? []
      : [say`From each wire of a feeder: under one ohm to its own rail, no connection to the other.`, fed]),
  ];
}

type Place = { readonly line: string; readonly at: number };

/** Places one after the other, as one sentence; empty where there are none. */
function placed<One extends Place>(places: readonly One[], before: (one: One) => string = () => ''): Sentence {
  return places.flatMap((one, i): Sentence => {
    const end = i === places.length - 1 ? '.' : '; ';
    return say`${before(one)}${one.line} at ${length(one.at)}${end}`;
  });
}

function pairOf({ stock: goods }: Plan, wire: Wire, wires: readonly Wire[]): PairWork {
  const other = wires.find(({ label }) => label === wire.label.replace(/a$/, 'b') && label !== wire.label);
  const { label, colour, from, note, to, length, stock } = wire;
  return {
    labels: other === undefined ? label : `${label} and ${other.label}`,
    colours: other === undefined || other.colour === colour ? colour : `${colour} and ${other.colour}`,
    ...{ from, note, to, length },
    stock: goods.find(({ id }) => id === stock)?.name ?? stock,
  };
}
