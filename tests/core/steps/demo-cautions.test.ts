import { describe, expect, test } from 'vitest';
import { compute } from '../../../src/core/notebook.ts';
import type { Step } from '../../../src/core/steps/step.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { loadContent } from '../../../src/reading/disk.ts';
import { readContent } from '../../../src/reading/read.ts';

/** What can hurt in a tool or a substance of a step, and a caution that names it; common practice, no source. */
const HURTS: readonly (readonly [named: string, cautions: readonly string[]])[] = [
  ['soldering-iron', ['soldering']],
  ['table-saw', ['table-saw', 'hearing-and-eyes', 'wood-dust']],
  ['circular-saw', ['circular-saw', 'hearing-and-eyes', 'wood-dust']],
  ['jigsaw', ['hearing-and-eyes', 'wood-dust']],
  ['router', ['router', 'hearing-and-eyes', 'wood-dust']],
  ['drill', ['hearing-and-eyes']],
  ['razor-saw', ['hand-saws', 'flying-ends']],
  ['keyhole-saw', ['hand-saws']],
  ['rail-cutter', ['flying-ends']],
  ['wire-cutters', ['flying-ends']],
  ['wire-strippers', ['flying-ends']],
  ['knife', ['knives']],
  ['craft-knife', ['knives']],
  ['hot-wire', ['hot-wire']],
  ['sandpaper', ['wood-dust']],
  ['wood-glue', ['glue']],
  ['plaster-cloth', ['plaster']],
  ['resin', ['resin']],
  ['sealer', ['finish']],
  ['pin-pusher', ['small-parts']],
];

/** Tools nobody is hurt by who uses them as they are meant. */
const HARMLESS: ReadonlySet<string> = new Set(
  'push-stick square stop-block straightedge pencil caliper template clamp clamps tape-measure screwdriver spanner spirit-level flush-trim-bit shims packers trammel steel-rule weights track-gauge file multimeter tape brush'.split(
    ' ',
  ),
);

/** Work a step tells of in its words, whatever tools it lists, and the caution for it. */
const TOLD: readonly (readonly [words: RegExp, caution: string])[] = [
  [/\bsolder (the|a) (joint|feeders?)|\biron comes to\b/i, 'soldering'],
  [/\bfill it with water|\bwet it\b|\bdipped\b|\bthinned white glue|\bpours? of\b/i, 'wet-by-wires'],
  [/\bsupply, closed as it came|\bshort every length|\brun every vehicle/i, 'unplug'],
  [/\bsupply, closed as it came|\brun every vehicle/i, 'mains'],
];

function lacking(step: Step): string[] {
  const has = new Set(step.cautions.map(({ id }) => id));
  const said = [step.title, ...step.lines.map((line) => spoken(line, String))].join('\n');
  const wanted = [
    ...HURTS.flatMap(([tool, ids]) => (step.tools.includes(tool) ? ids : [])),
    ...TOLD.flatMap(([words, id]) => (words.test(said) ? [id] : [])),
  ];
  const unknown = step.tools.filter((tool) => !HARMLESS.has(tool) && !HURTS.some(([name]) => name === tool));
  return [
    ...wanted.filter((id) => !has.has(id)).map((id) => `${step.id}: no caution ${id}`),
    ...unknown.map((tool) => `${step.id}: nobody knows whether ${tool} hurts`),
  ];
}

const { plans } = readContent(await loadContent('content'));
const steps = plans.flatMap((plan) => {
  const made = compute(plan);
  return made.ok ? made.value.steps : [];
});
const stepOf = (id: string): Step => {
  const found = steps.find((step) => step.id === id);
  if (found === undefined) throw new Error(`no step ${id}`);
  return found;
};

describe('the cautions of every computed step of the demos', () => {
  const computed = steps.filter(({ generated }) => generated);

  test('each tool that can hurt has its caution, and so has work that only the words tell of', () => {
    expect(computed.length).toBeGreaterThan(60);
    expect(computed.flatMap(lacking)).toEqual([]);
  });

  test('planted fault: an iron without its caution, in the tools or only in the words, and a tool nobody knows', () => {
    const rails = stepOf('track.lay-track');
    const bare = { ...rails, cautions: rails.cautions.filter(({ id }) => id !== 'soldering') };
    expect(lacking(bare)).toEqual(['track.lay-track: no caution soldering', 'track.lay-track: no caution soldering']);
    expect(lacking({ ...bare, tools: [] })).toEqual(['track.lay-track: no caution soldering']);
    expect(lacking({ ...rails, tools: ['blowlamp'] })).toEqual([
      'track.lay-track: nobody knows whether blowlamp hurts',
    ]);
    const tray = stepOf('scenery.basin-tray');
    expect(lacking({ ...tray, cautions: tray.cautions.filter(({ id }) => id !== 'wet-by-wires') })).toHaveLength(1);
  });

  test('a written step that works with the supply on has the cautions of the supply, one before it has not', () => {
    const ids = (id: string) => stepOf(id).cautions.map((caution) => caution.id);
    expect(ids('wiring.test-feeders')).toEqual(expect.arrayContaining(['mains', 'unplug', 'soldering']));
    expect(ids('wiring.solder-feeders')).not.toContain('unplug');
  });
});
