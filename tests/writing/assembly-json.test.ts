import { expect, test } from 'vitest';
import { machiningOf } from '../../src/core/assembly/machining/machining.ts';
import { USUAL_MACHINES } from '../../src/core/assembly/machining/operation.ts';
import { spoken } from '../../src/core/units/say.ts';
import { assemblyJson, machiningJson } from '../../src/writing/assembly-json.ts';
import { proved } from '../core/assembly/proved.ts';
import { model, table } from '../core/benchwork/example.ts';

const input = table([17.7]);
const built = model(input);
const say = (sentence: Parameters<typeof spoken>[0]) => spoken(sentence, (mm) => `${Math.round(mm * 10) / 10} mm`);

test('an assembly is written as poses with packers and order, the chosen one named, other benches under others', () => {
  const one = proved(input, built);
  const json = assemblyJson([one, { ...one, bench: 'second' }], say);
  expect(json).toMatchObject({
    bench: 'table',
    chosen: 'upside-down',
    poses: [
      { pose: 'upright', turns: 2 },
      { pose: 'upside-down', packers: [], turns: 1 },
    ],
    others: [{ bench: 'second' }],
  });
  const text = JSON.stringify(json);
  expect(text).toContain('{"part":"strut.across-1","where":"front end","at":[404.425,11.8],"height":35}');
  expect(text).toContain(
    '{"parts":["end.left"],"direction":[1,0,0],"with":["strut.along-1"],"joints":["dado.end.left.strut.along-1"]',
  );
  expect(text).not.toMatch(/-0[,\]]|null,null/);
});

test('no bench is null, and machining keeps its set-ups', () => {
  expect(assemblyJson([], say)).toBeNull();
  const side = machiningOf(built.parts, USUAL_MACHINES).find(({ part }) => part === 'side.front');
  expect(side === undefined ? null : machiningJson(side)).toMatchObject({
    part: 'side.front',
    operations: [
      { id: 'rip', setUp: { fence: 170 } },
      { id: 'crosscut', setUp: { stop: 1600 } },
      { kind: 'dado' },
      { kind: 'dado' },
      { kind: 'dado' },
      { kind: 'rabbet' },
      { kind: 'rabbet' },
    ],
  });
});
