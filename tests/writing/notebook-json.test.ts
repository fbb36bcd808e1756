import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { notebookJson } from '../../src/writing/notebook-json.ts';
import { shelf } from './shelf.ts';

const schema = JSON.parse(readFileSync('src/writing/notebook.schema.json', 'utf8'));
/** zod reads the JSON Schema by itself, so it judges our writer and our schema from outside. */
const contract = z.fromJSONSchema(schema);
const written = () => JSON.parse(notebookJson(shelf));

test('an export follows the committed schema', () => {
  expect(contract.safeParse(written()).error?.issues ?? []).toEqual([]);
});

type Shape = { type?: unknown; required?: string[]; properties?: Record<string, Shape>; items?: Shape; $ref?: string };

function resolved(shape: Shape): Shape {
  const name = shape.$ref?.replace('#/definitions/', '');
  return name === undefined ? shape : schema.definitions[name];
}

/** Every path to an object's required key, `[]` for an item. */
function requiredPaths(shape: Shape, path: string): string[] {
  const { required = [], properties = {}, items } = resolved(shape);
  const own = required.map((key) => `${path}.${key}`);
  const deeper = Object.entries(properties).flatMap(([key, inner]) => requiredPaths(inner, `${path}.${key}`));
  return [...own, ...deeper, ...(items === undefined ? [] : requiredPaths(items, `${path}[]`))];
}

/** The value without the key at the end of a path, everywhere the path leads. */
function without(value: unknown, path: string): unknown {
  const [, key = '', rest = ''] = /^\.([^.[]+)(.*)$/.exec(path) ?? [];
  if (path.startsWith('[]')) return Array.isArray(value) ? value.map((item) => without(item, path.slice(2))) : value;
  const entries = Object.entries(value as object);
  if (rest === '') return Object.fromEntries(entries.filter(([name]) => name !== key));
  return Object.fromEntries(entries.map(([name, inner]) => [name, name === key ? without(inner, rest) : inner]));
}

const paths = requiredPaths(schema, '');

test('the contract names at least the keys that were promised', () => {
  const promised = [
    ...['.notebook.slug', '.notebook.title', '.notebook.scale'],
    ...'id label stock quantity length width thickness grain features places mass'
      .split(' ')
      .map((key) => `.parts[].${key}`),
    ...['.joints', '.steps', '.log', '.fixes'],
    ...'parts[].id parts[].instance parts[].state steps[].id steps[].state leftToMake hours money'
      .split(' ')
      .map((key) => `.state.${key}`),
    ...'stock length width kerf parts cuts'.split(' ').map((key) => `.sheets[].${key}`),
    ...'part x y length width turned'.split(' ').map((key) => `.sheets[].parts[].${key}`),
    ...'stock found proved bound'.split(' ').map((key) => `.bounds[].${key}`),
    ...'rule level where what figure limit unit mend source accepted'.split(' ').map((key) => `.findings[].${key}`),
  ];
  expect(promised.filter((path) => !paths.includes(path))).toEqual([]);
});

test('an export without any one of the required keys breaks the contract', () => {
  const accepted = paths.filter((path) => contract.safeParse(without(written(), path)).success);
  expect(paths.length).toBeGreaterThan(100);
  expect(accepted).toEqual([]);
});

test('keys that later versions add do not break the contract', () => {
  const json = written();
  json.parts[0].colour = 'none';
  json.weather = [];
  expect(contract.safeParse(json).success).toBe(true);
});

test.each([
  ['a length as text', (json: ReturnType<typeof written>) => Object.assign(json.parts[0], { length: '1200 mm' })],
  ['an unknown level', (json: ReturnType<typeof written>) => Object.assign(json.findings[0], { level: 'bad' })],
  ['half a point', (json: ReturnType<typeof written>) => Object.assign(json.seams[0], { from: [1] })],
])('%s breaks the contract', (_, spoil) => {
  const json = written();
  spoil(json);
  expect(contract.safeParse(json).success).toBe(false);
});

test('every key that is written is named in the schema, save the free ones of features and entries', () => {
  const unknown: string[] = [];
  const walk = (value: unknown, shape: Shape, path: string): void => {
    const { properties, items } = resolved(shape);
    if (Array.isArray(value)) for (const item of value) walk(item, items ?? {}, `${path}[]`);
    else if (typeof value === 'object' && value !== null && properties !== undefined) {
      for (const [key, inner] of Object.entries(value)) {
        if (properties[key] === undefined) unknown.push(`${path}.${key}`);
        walk(inner, properties[key] ?? {}, `${path}.${key}`);
      }
    }
  };
  walk(written(), schema, '');
  const free = /^\.parts\[\]\.features\[\]\.|^\.log\[\]\.|^\.sheets\[\]\.cuts\[\]\.(stage|cautions)$/;
  expect([...new Set(unknown)].filter((path) => !free.test(path))).toEqual([]);
});

test('lengths are in mm to a thousandth, directions and angles to a millionth, nothing is -0', () => {
  const json = written();
  expect(json.parts[0]).toMatchObject({ length: 1200, thickness: 11.733, mass: 0.812, quantity: 2 });
  expect(json.parts[0].features[0].patch).toEqual({ x0: 0, x1: 12.033, y0: 20, y1: 90 });
  expect(json.parts[0].features[1].angle).toBe(0.785398);
  expect(json.dimensions[1].value).toBe(0.006667);
  expect(json.benches[0].place.turn).toBe(1.570796);
  expect(json.parts[0].places[0].z).toEqual([0, -1, 0.333333]);
  expect(json.parts[0].places[0].y).toEqual([0, 0, 1]);
  expect(json.parts[1].mass).toBeNull();
  expect(notebookJson(shelf)).not.toMatch(/-0[,\n]|NaN/);
});

test('the state is that of the log: made and left together are what is asked, fixes stand in the register', () => {
  const { fixes, parts, state } = written();
  const left = state.leftToMake.reduce((sum: number, one: { quantity: number }) => sum + one.quantity, 0);
  const made = state.parts.filter((one: { made: boolean }) => one.made).length;
  expect(made + left).toBe(parts.reduce((sum: number, one: { quantity: number }) => sum + one.quantity, 0));
  expect(state.parts[0]).toMatchObject({ instance: 'side.front', state: 'mended', made: true });
  expect(fixes).toEqual([expect.objectContaining({ part: 'side.front', at: 310, leaves: 'half', stands: true })]);
  expect(state.money.spent.every((one: { value: number }) => one.value >= 0)).toBe(true);
});

test("sentences are written in the notebook's own unit", () => {
  expect(written().findings[0].what).toBe('The seam bears on 5.9 mm a side.');
  expect(written().steps[0].lines).toEqual(['Set the fence to 90 mm.']);
  const inches = JSON.parse(notebookJson({ ...shelf, show: 'in' }));
  expect(inches.findings[0].mend).toBe('Screw a batten of 1 3/16 in beside it.');
  expect(inches.findings[0].figure).toBe(5.867);
});

function turnedRound(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(turnedRound);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, inner]) => [key, turnedRound(inner)]),
  );
}

test('the order of keys does not depend on the order in which the core made them', () => {
  expect(notebookJson(turnedRound(shelf) as typeof shelf)).toBe(notebookJson(shelf));
});
