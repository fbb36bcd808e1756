import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { sceneryModel } from '../../src/core/scenery/scenery.ts';
import { notebookJson } from '../../src/writing/notebook-json.ts';
import { around, bare, cloth, hill, pond } from '../core/scenery/table.ts';
import { shelf } from './shelf.ts';

const contract = z.fromJSONSchema(JSON.parse(readFileSync('src/writing/notebook.schema.json', 'utf8')));
const zones = [{ id: 'green', at: '', outline: pond.outline, of: [cloth], trees: 40 }];
const scenery = sceneryModel({ ...bare, forms: [hill], water: [pond], zones }, around);
const written = () => JSON.parse(notebookJson({ ...shelf, scenery, requests: scenery.requests }));

test('the land follows the contract, and each of its keys is needed', () => {
  expect(contract.safeParse(written()).error?.issues ?? []).toEqual([]);
  for (const key of Object.keys(written().scenery)) {
    const json = written();
    delete json.scenery[key];
    expect(contract.safeParse(json).success, key).toBe(false);
  }
});

test('volumes are litres, heights mm, masses kg for each square metre', () => {
  const { scenery: land, requests } = written();
  expect(land.volumes.left).toBeCloseTo(scenery.volumes.left / 1e6, 3);
  expect(land.water[0]).toMatchObject({
    id: 'pond',
    surface: -6,
    bottom: -16,
    underside: -19,
    volume: 0.15,
    mixed: 0.165,
  });
  expect(land.layers.map(({ from, to }: { readonly from: number; readonly to: number }) => [from, to])).toEqual([
    [0, 25],
    [25, 50],
    [50, 75],
    [75, 100],
  ]);
  expect(requests[0]).toMatchObject({
    by: 'pond',
    part: 'strut.across-1',
    kind: 'notch',
    where: [333, 150, 691],
    limit: 15,
  });
});

test('a notebook without land says so', () => {
  expect(JSON.parse(notebookJson(shelf)).scenery).toBeNull();
});
