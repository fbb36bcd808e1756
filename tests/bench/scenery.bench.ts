import { contours as libraryContours } from 'd3-contour';
import { describe, expect, it } from 'vitest';
import { contours } from '../../src/core/scenery/contour.ts';
import { type Field, heightField } from '../../src/core/scenery/field.ts';
import { type Grid, sampled } from '../../src/core/scenery/grid.ts';
import type { Hill, Path } from '../../src/core/scenery/land.ts';
import { foamLayers } from '../../src/core/scenery/layer.ts';

const DOMAIN = { low: [0, 0], high: [1600, 1200] } as const;

/** Ten hills spread over the table and four lines winding past them, 100 stretches each. */
const hills = Array.from(
  { length: 10 },
  (_, i): Hill => ({
    ...{ kind: 'hill', id: `hill-${i}`, form: i % 2 === 0 ? 'dome' : 'cone' },
    top: [150 + ((i * 397) % 1300), 120 + ((i * 251) % 960)],
    height: 60 + ((i * 37) % 90),
    footRadius: 120 + ((i * 53) % 180),
  }),
);

const lines = Array.from(
  { length: 4 },
  (_, i): Path => ({
    ...{ id: `line-${i}`, half: 19, slope: 2 / 3, free: [] },
    points: Array.from({ length: 101 }, (_p, k) => ({
      at: k * 16,
      x: k * 16,
      y: 200 + i * 260 + 80 * Math.sin(k / 9 + i),
      z: 10 + 8 * Math.sin(k / 15),
    })),
  }),
);

const shaping = { forms: hills, spots: [], spotReach: 300, paths: lines };
const within = [
  [
    [0, 0],
    [1600, 0],
    [1600, 1200],
    [0, 1200],
  ],
] as const;

/** `library` is the general library on the same grid and levels. */
type Work = { readonly field: number; readonly contours: number; readonly library: number; readonly layers: number };

function now(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** The quickest of several runs of each stage, ms. */
function measured(columns: number): Work {
  const step = 1600 / (columns - 1);
  const field: Field = heightField(shaping);
  const grid: Grid = sampled(field, DOMAIN, step);
  const levels = Array.from({ length: 15 }, (_, i) => i * 10 + 0.01);
  const best = (work: () => unknown) => Math.min(...Array.from({ length: 5 }, () => now(work)));
  return {
    field: best(() => sampled(heightField(shaping), DOMAIN, step)),
    contours: best(() => levels.map((level) => contours(grid, level))),
    library: best(() => {
      const values = Array.from(grid.values);
      const drawn = libraryContours().size([grid.nx, grid.ny]);
      return levels.map((level) => drawn.contour(values, level));
    }),
    layers: best(() =>
      foamLayers({ grid, field: null, thickness: 25, hollow: null, within, without: [], room: () => [] }),
    ),
  };
}

const total = ({ field, contours: lined, layers }: Work) => field + lined + layers;

describe('a table of ten hills and four lines', () => {
  it('takes work as its nodes do: twice the columns, about four times the work', () => {
    const sizes = [100, 200, 400].map((columns) => ({ columns, ...measured(columns) }));
    const tenths = (value: number) => Math.round(value * 10) / 10;
    for (const { columns, field, contours: lined, library, layers } of sizes) {
      const ms = (value: number) => `${Math.round(value)} ms`;
      console.log(`${columns} columns: field ${ms(field)}, contours ${ms(lined)}, layers ${ms(layers)}`);
      console.log(`${columns} columns: a general library's contours take ${tenths(library / lined)} times as long`);
    }
    expect(sizes.every(({ library, contours: lined }) => lined < 3 * library)).toBe(true);
    const [, middle, fine] = sizes;
    const growth = middle === undefined || fine === undefined ? Number.NaN : total(fine) / total(middle);
    console.log(`growth from 200 to 400 columns: ${Math.round(growth * 100) / 100}`);
    expect(growth).toBeLessThan(6);
  });
});
