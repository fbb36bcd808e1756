import { expect, test } from 'vitest';
import { length, say } from '../../src/core/units/say.ts';
import { byLabels } from '../../src/site/finding-words.ts';
import { notebook } from './fixture.ts';

test('a finding names a piece by the label on its wood, and leaves other words alone', () => {
  const [piece] = notebook.parts.flatMap(({ places }) => places).filter(({ id }) => id.includes('.'));
  expect.assert(piece !== undefined);
  const said = byLabels({ notebook }, say`It leaves ${length(24)} to the edge of ${piece.id} by IRC R502.8.1.`);
  const words = said.map((one) => (typeof one === 'string' ? one : one.length)).join('');
  expect(words).toContain(`to the edge of ${piece.label} (`);
  expect(words).not.toContain(piece.id);
  expect(words).toMatch(/^It leaves 24 .* by IRC R502\.8\.1\.$/);
});

test('a label that is told already is not told twice, and another label before a piece stays', () => {
  const [piece, other] = notebook.parts.flatMap(({ places }) => places).filter(({ id }) => id.includes('.'));
  expect.assert(piece !== undefined && other !== undefined);
  const own = byLabels({ notebook }, say`${piece.label} on ${piece.id}; 6 marks.`).join('');
  expect(own).toContain(`${piece.label} on `);
  expect(own).not.toContain('(');
  const foreign = byLabels({ notebook }, say`${other.label} on ${piece.id}`).join('');
  expect(foreign).toContain(`${other.label} on ${piece.label} (`);
});
