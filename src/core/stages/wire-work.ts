import type { Plan } from '../plan.ts';
import type { PairWork, WireWork } from '../steps/generated/wires.ts';
import { CLIP_EVERY } from '../wiring/small-parts.ts';
import type { Wire } from '../wiring/wire-list.ts';
import type { WiringModel } from '../wiring/wiring.ts';

/** The wiring as its steps need it. */
export function wireWork(plan: Plan, wiring: WiringModel, benches: readonly string[]): WireWork {
  const pairs = wiring.wires.filter(({ label }) => !label.endsWith('b'));
  const isDead = ({ id }: { readonly id: string }) => id.startsWith('cut.') || id.startsWith('feeder.');
  const rows = (all: WiringModel['tests']) => all.map(({ what, expect }) => [...what, ' ', ...expect]);
  return {
    bus: pairs.filter(({ kind }) => kind === 'bus').map((wire) => pairOf(wire, wiring.wires)),
    tails: pairs.filter(({ kind }) => kind !== 'bus').map((wire) => pairOf(wire, wiring.wires)),
    clipEvery: CLIP_EVERY,
    through: wiring.holes.map(({ part }) => part),
    cuts: wiring.gaps.map(({ line, at, rails }) => ({ line, at, rails })),
    dead: rows(wiring.tests.filter(isDead)),
    live: rows(wiring.tests.filter((test) => !isDead(test))),
    supply: { volts: wiring.volts, tripsAt: wiring.tripsAt },
    before: {
      benchwork: benches.map((id) => `benchwork.${id}-seal`),
      track: (plan.track?.steps ?? []).map(({ id }) => `track.${id}`),
    },
  };
}

function pairOf(wire: Wire, wires: readonly Wire[]): PairWork {
  const other = wires.find(({ label }) => label === wire.label.replace(/a$/, 'b') && label !== wire.label);
  const { label, colour, from, to, length, stock } = wire;
  return {
    labels: other === undefined ? label : `${label} and ${other.label}`,
    colours: other === undefined || other.colour === colour ? colour : `${colour} and ${other.colour}`,
    ...{ from, to, length, stock },
  };
}
