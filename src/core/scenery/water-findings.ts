import type { Finding } from '../finding.ts';
import { bounds } from '../geometry/polygon.ts';
import { atLeast, atMost, length, type Sentence, say } from '../units/say.ts';
import { found, PRACTICE } from './found.ts';
import type { BuiltWater } from './model.ts';
import { DEEPEST_POUR } from './pours.ts';
import type { Site } from './site.ts';
import { toBench } from './site.ts';

/** What a water does to the bench, and what its pours need. */
export function waterFindings(water: BuiltWater, site: Site | null): readonly Finding[] {
  if (site === null) return [offDeck(water)];
  return [...overEdge(water, site), ...cutFindings(water), ...blocked(water), ...hotPour(water), ...shallowDam(water)];
}

function offDeck({ id }: BuiltWater): Finding {
  return found({
    ...{ rule: 'water-off-deck', level: 'halt', where: id },
    what: say`${id} lies on no bench.`,
    mend: say`Move its outline onto a deck.`,
    source: 'geometry',
  });
}

function overEdge(water: BuiltWater, site: Site): readonly Finding[] {
  const { low, high } = bounds(water.outline.map((point) => toBench(site.pose, point)));
  const { length: long, width } = site.bench;
  const over = Math.max(-low[0], -low[1], high[0] - long, high[1] - width);
  if (over <= 0) return [];
  return [
    found({
      ...{ rule: 'water-over-edge', level: 'halt', where: water.id, figure: over, limit: 0 },
      what: say`${water.id} runs ${length(over)} over the edge of ${site.bench.id}.`,
      mend: say`Pull its outline in by ${atLeast(over)} and the thickness of a wall.`,
      source: 'geometry',
    }),
  ];
}

/** Frame parts it takes a bite of, with the nearest place that takes none. */
function cutFindings(water: BuiltWater): readonly Finding[] {
  return water.under
    .filter(({ cut, role }) => cut && role !== 'deck')
    .map(({ id, deep }) =>
      found({
        ...{ rule: 'water-cuts-frame', level: 'care', where: water.id, figure: deep, limit: 0 },
        what: say`${water.id} and its floor reach ${length(deep)} into ${id}.`,
        mend: clearSentence(water, id),
        source: 'geometry',
      }),
    );
}

function clearSentence({ clear, id }: BuiltWater, part: string): Sentence {
  const { move, smaller } = clear ?? { move: null, smaller: null };
  const moved =
    move === null
      ? []
      : say`Move ${id} ${length(Math.abs(move[0] + move[1]))} ${wayOf(move)} and it cuts nothing but the deck`;
  const kept =
    smaller === null
      ? []
      : say`keep it to ${atMost(smaller.high[0] - smaller.low[0])} by ${atMost(smaller.high[1] - smaller.low[1])} from ${length(smaller.low[0])}, ${length(smaller.low[1])}`;
  if (move !== null && smaller !== null) return [...moved, ', or ', ...kept, '.'];
  if (move !== null) return [...moved, '.'];
  if (smaller !== null) return ['To cut nothing but the deck, ', ...kept, '.'];
  return say`There is no place on this bench for it clear of the frame: make it shallower, or move ${part}.`;
}

function wayOf([dx, dy]: readonly [number, number]): string {
  if (dx !== 0) return dx > 0 ? 'to the right' : 'to the left';
  return dy > 0 ? 'back' : 'forward';
}

/** What may not be cut: a leg, a flange strip, a drawer, a motor. */
function blocked(water: BuiltWater): readonly Finding[] {
  return water.under
    .filter(({ cut }) => !cut)
    .map(({ id, role, deep, above }) =>
      found({
        ...{ rule: 'water-blocked', level: 'halt', where: water.id, figure: deep, limit: 0 },
        what: say`${water.id} reaches ${length(deep)} into the space of ${id} (${role}), which cannot be cut.`,
        mend: say`Make ${water.id} ${atLeast(above)} shallower, or move one of the two.`,
        source: 'geometry',
      }),
    );
}

function hotPour({ id, depth, pours }: BuiltWater): readonly Finding[] {
  if (pours.each <= DEEPEST_POUR) return [];
  const count = Math.ceil(depth / DEEPEST_POUR - 1e-9);
  return [
    found({
      ...{ rule: 'pour-hot', level: 'care', where: id, figure: pours.each, limit: DEEPEST_POUR },
      what: say`${id} is poured ${length(pours.each)} deep at a time; resin that thick gets hot and can crack or lift.`,
      mend: say`Pour ${String(count)} times, ${length(depth / count)} each, or keep to what the label allows.`,
      source: "sellers' instructions for casting water, 1/8 to 1/4 in a pour",
    }),
  ];
}

function shallowDam({ id, level }: BuiltWater): readonly Finding[] {
  const { room, dam, deeper, length: long } = level;
  if (room >= dam) return [];
  return [
    found({
      ...{ rule: 'dam-low', level: 'care', where: id, figure: room, limit: dam },
      what: say`The banks of ${id} stand ${length(room)} over its floor; a lean of 1:96 lifts the low end by ${length(deeper)} over ${length(long)}.`,
      mend: say`Level the table under ${id} before pouring, or raise the banks to ${atLeast(dam)}.`,
      source: PRACTICE,
    }),
  ];
}
