import { describe, expect, it } from 'vitest';
import { fromWorld, standing } from '../../../src/core/geometry/pose.ts';
import { compute } from '../../../src/core/notebook.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { gapTag } from '../../../src/core/wiring/gap.ts';
import { holeTag } from '../../../src/core/wiring/holes.ts';
import { colours, FROG_COLOUR, type Wire } from '../../../src/core/wiring/wire.ts';
import { changedPlan } from './changed-demo.ts';

const answer = compute(changedPlan());
if (!answer.ok || answer.value.wiring === null) throw new Error('the demo notebook does not compute');
const book = answer.value;
const { wiring } = answer.value;
if (wiring === null) throw new Error('no wiring');

const mm = (value: number) => value.toFixed(1);
const firsts = wiring.wires.filter(({ id }) => id.endsWith('-a'));

/** Ends of heavy wires in words that stand for two different places. */
function alike(wires: readonly Wire[], say: (wire: Wire) => readonly [string, string]): readonly string[] {
  const places = new Map<string, string>();
  return wires.flatMap((wire) =>
    say(wire).filter((words, i) => {
      const [x, y] = (i === 0 ? wire.path[0] : wire.path.at(-1)) ?? [0, 0];
      const place = `${mm(x)} ${mm(y)}`;
      const before = places.get(words) ?? place;
      places.set(words, before);
      return before !== place;
    }),
  );
}

describe('a heavy wire can be laid from the list alone', () => {
  const buses = firsts.filter(({ kind }) => kind === 'bus');
  const words = ({ from, to }: Wire) => [spoken(from, mm), spoken(to, mm)] as const;

  it('no end of one is told as another place is', () => {
    expect(buses.length).toBeGreaterThan(10);
    expect(alike(buses, words)).toEqual([]);
    // planted fault: ends without their figures
    const vague = (wire: Wire) =>
      words(wire).map((one) => one.replaceAll(/[\d.]+/g, '')) as unknown as [string, string];
    expect(alike(buses, vague).length).toBeGreaterThan(4);
  });

  it('each T-joint lies where the wire that leaves there begins', () => {
    const [bench] = book.benches;
    const pose = standing([bench?.place.x ?? 0, bench?.place.y ?? 0], bench?.place.turn ?? 0);
    const wrong = (wires: readonly Wire[]) =>
      wires.filter(({ from, path }) => {
        const [x, y] = fromWorld(pose, path[0] ?? [0, 0, 0]);
        const said = /^T-joint T\d+ on pair \d+, (.*)$/.exec(spoken(from, mm));
        return said !== null && said[1] !== `${mm(x)} along and ${mm(y)} across`;
      });
    const tees = new Set(buses.flatMap(({ from }) => /T-joint (T\d+)/.exec(spoken(from, mm))?.[1] ?? []));
    expect(tees.size).toBeGreaterThan(3);
    expect(wrong(buses)).toEqual([]);
    // planted fault: each wire runs the other way
    expect(wrong(buses.map((wire) => ({ ...wire, path: wire.path.toReversed() }))).length).toBeGreaterThan(3);
  });
});

describe('colours', () => {
  /** IEC 60445: line brown, neutral blue, earth green with yellow. */
  const mains = (used: readonly string[]) => used.filter((one) => ['brown', 'blue', 'green', 'yellow'].includes(one));

  it('are none of the mains', () => {
    const used = [...(['rails', 'turnout', 'other'] as const).flatMap((use) => colours(use)), FROG_COLOUR];
    expect(new Set(used).size).toBe(used.length);
    expect(mains([...used, ...wiring.wires.map(({ colour }) => colour)])).toEqual([]);
    expect(mains(['red', 'brown'])).toEqual(['brown']);
  });
});

describe('what is bought', () => {
  const count = (name: RegExp) =>
    wiring.smallParts.filter((one) => name.test(one.name)).reduce((sum, { quantity }) => sum + quantity, 0);

  it('counts joints of thin wires and of heavy ones apart', () => {
    const thin = wiring.wires.filter(({ kind, on }) => ['feeder', 'lead', 'load'].includes(kind) && on !== null);
    expect(count(/joint of a thin wire/)).toBe(thin.length);
    expect(count(/joint of a unit/)).toBe(wiring.wires.filter(({ kind }) => kind === 'unit').length);
  });

  it('throws each motor, and parts each lead at a plug', () => {
    expect(count(/^Accessory decoder/)).toBe(count(/^Turnout motor/));
    expect(count(/^Accessory decoder/)).toBe(3);
    const leads = firsts.filter(({ kind }) => kind === 'lead');
    expect(count(/^Plug and socket/)).toBe(leads.length);
    expect(leads.map(({ note = [] }) => /hinge of lift-bridge, main at 56\.0/.test(spoken(note, mm)))).toEqual([true]);
  });

  it('is wire by its colours, whole metres of each', () => {
    const line = book.shopping.lines.find(({ stock }) => stock === 'wire-0.5');
    const metres = (colour: string) =>
      Math.ceil(
        wiring.wires
          .filter((one) => one.stock === 'wire-0.5' && one.colour === colour)
          .reduce((sum, { length }) => sum + length / 1000, 0),
      );
    const all = ['red', 'black', 'orange', 'pink', 'violet', 'white'];
    expect(line?.name).toContain(`(${all.map((one) => `${one} ${metres(one)} m`).join(', ')})`);
    expect(line?.quantity).toBe(all.reduce((sum, one) => sum + metres(one), 0));
  });
});

describe('the steps', () => {
  const steps = book.steps.filter(({ chapter }) => chapter === 'wiring');
  const place = (id: string) => steps.findIndex((one) => one.id === `wiring.${id}`);
  const said = (id: string) => (steps[place(id)]?.lines ?? []).map((line) => spoken(line, mm)).join('\n');

  it('test the cuts before a feeder is joined', () => {
    expect(place('test-cuts')).toBeGreaterThan(place('cut-rails'));
    expect(place('solder-feeders')).toBeGreaterThan(place('test-cuts'));
    expect(steps[place('solder-feeders')]?.after).toContain('wiring.test-cuts');
  });

  it('name every hole with its size and board where it is drilled, and every cut where it is cut and tested', () => {
    const unsaid = (text: string) =>
      wiring.holes.filter(
        ({ diameter, id, part }) => !text.includes(`Hole ${holeTag(id)}, ${mm(diameter)} across, through ${part}.`),
      );
    expect(unsaid(said('run-bus'))).toEqual([]);
    expect(unsaid(said('run-bus').replace('Hole H2,', '')).map(({ id }) => id)).toEqual(['hole-2']);
    expect(steps[place('run-bus')]?.tools).toContain('drill');
    for (const { at, id, line } of wiring.gaps) {
      expect(said('cut-rails')).toContain(`Cut ${gapTag(id)}: ${line} at ${mm(at)}`);
      expect(said('test-cuts')).toContain(`${gapTag(id)}, ${line} at ${mm(at)}`);
    }
  });
});
