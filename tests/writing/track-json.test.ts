import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { layTrack } from '../../src/core/track/lay.ts';
import { trackJson } from '../../src/writing/track-json.ts';
import { oval } from '../core/track/example.ts';

const schema = JSON.parse(readFileSync('src/writing/notebook.schema.json', 'utf8'));
/** zod reads the JSON Schema by itself, so it judges our writer and our schema from outside. */
const contract = z.fromJSONSchema({ ...schema, required: ['track'], properties: { track: schema.properties.track } });

const json = trackJson(layTrack(oval()).model, oval());

test('the track is written as its schema says', () => {
  expect(contract.safeParse({ track: json }).error?.issues ?? []).toEqual([]);
  const told = JSON.parse(JSON.stringify(json));
  expect(contract.safeParse({ track: { ...told, lines: [{ ...told.lines[0], length: '3819' }] } }).success).toBe(false);
  expect(contract.safeParse({ track: { ...told, setOut: undefined } }).success).toBe(false);
});

test('lengths to a thousandth, found values and extents as computed', () => {
  const told = JSON.parse(JSON.stringify(json));
  const [main] = told.lines;
  expect(main.extents).toEqual({ x0: 59.021, x1: 1534.979, y0: 150, y1: 911.775 });
  expect(main.unknowns).toEqual([
    { piece: 4, what: 'straight', value: 151.167 },
    { piece: 5, what: 'radius', value: 380 },
  ]);
  expect(main.elements.map(({ kind }: { kind: string }) => kind).join(' ')).toBe(
    'straight easement arc easement straight straight straight easement arc easement',
  );
  expect(told.turnouts[0].ends.points.x).toBe(750);
});
