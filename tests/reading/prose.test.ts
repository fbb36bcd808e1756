import { expect, test } from 'vitest';
import { proseByStep } from '../../src/reading/prose.ts';

const body =
  'Words first.\n\n## rip-strips\n\nFull lengths first.\n\n## Rout the laps `rout`\n\nScrap first.\n\n## Still open\n\nLegs.\n';

test("a step's prose stands under its id, alone or at the heading's end, and reaches to the next heading", () => {
  const found = proseByStep(
    { chapter: 'benchwork', file: 'b.md', body, firstLine: 9 },
    new Set(['rip-strips', 'rout', 'sand']),
  );
  expect(found).toEqual({ 'rip-strips': 'Full lengths first.', rout: 'Scrap first.' });
});
