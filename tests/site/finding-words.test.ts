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
