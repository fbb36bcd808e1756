import { beforeAll, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import editorSchema from '../../content/.schema/scenery.json' with { type: 'json' };
import type { Problem } from '../../src/core/units/problem.ts';
import type { ContentFile } from '../../src/reading/content-file.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { moreProblems } from '../../src/reading/survey.ts';
import { FUZZ_CHAPTER, FUZZ_FILES, landAlone, ODD, type Way, waysInto, withOdd } from './land-fuzz.ts';

const SHIPPED = new URL('../../content', import.meta.url).pathname;
const chapter: unknown = parse(FUZZ_CHAPTER);
/** Shared files the chapter names goods of. */
const NEEDED = /^(?:stock\/(?:birch-plywood|covers|fibre-boards|foam|roadbed)|trains\/n)/;
let shipped: readonly ContentFile[] = [];

beforeAll(async () => {
  const files = await loadContent(SHIPPED);
  shipped = files.filter(({ path }) => NEEDED.test(path));
});

/** What is told of a chapter's front matter. */
function told(frontMatter: unknown): readonly Problem[] {
  const text = `---\n${stringify(frontMatter)}---\n\nThe land.\n`;
  const own = [...FUZZ_FILES, { path: 'notebooks/tarn/scenery.md', text }].map(({ path, text: body }) => ({
    ...{ path, kind: 'file' as const, size: body.length },
    bytes: new TextEncoder().encode(body),
  }));
  const content = readContent([...own, ...shipped]);
  return [...content.problems, ...moreProblems(content, landAlone)];
}

/** Names of the properties of a JSON schema's own properties and of all within them. */
function propertyNames(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) =>
    key === 'properties' ? [...Object.keys(item), ...propertyNames(item)] : propertyNames(item),
  );
}

const said = (way: Way, odd: unknown) => `${way.join('.')} as ${JSON.stringify(odd) ?? 'nothing'}`;

test('the chapter that is bent has every key of the schema, and is right', () => {
  const written = new Set(waysInto(chapter).flat());
  const known = propertyNames({ ...editorSchema.properties, steps: null });
  expect(known.length).toBeGreaterThan(40);
  expect(known.filter((key) => !written.has(key))).toEqual([]);
  expect(told(chapter)).toEqual([]);
});

/** Each value is bent in one way, its neighbours in others; ALL_ODD=1 bends each in all, which takes many minutes. */
function oddsFor(way: number): readonly unknown[] {
  if (process.env.ALL_ODD === '1') return ODD;
  return [ODD[(way * 7) % ODD.length]];
}

test('a zone of no such hill is told by its nearest name, and land higher than a room by its limit', () => {
  const zone = (outline: string) =>
    told(withOdd(chapter, ['cover', 0, 'outline'], outline)).map(({ what, mend }) => [what, mend]);
  expect(zone('knob.fot')[0]?.join(' ')).toMatch(/`knob.fot` is not the foot of a hill.*`knob.foot`/);
  expect(zone('tarn')[0]?.[0]).toContain('`tarn` is not the foot of a hill');
  const high = told(withOdd(chapter, ['ground', 'hills', 0, 'height'], '99999 mm'));
  expect(high.map(({ rule }) => rule)).toContain('land-too-high');
});

test('no value of any key makes it fall over, and whatever is refused is told with its place and a mend', () => {
  const ways = waysInto(chapter);
  let refused = 0;
  const broken: string[] = [];
  for (const [i, way] of ways.entries()) {
    for (const odd of oddsFor(i)) {
      try {
        const problems = told(withOdd(chapter, way, odd));
        if (problems.length > 0) refused += 1;
        const bare = problems.filter(({ line, column, mend, what }) => !(line > 0 && column > 0 && mend && what));
        if (bare.length > 0) broken.push(`${said(way, odd)}: told without a place or a mend`);
      } catch (fault) {
        broken.push(`${said(way, odd)}: ${fault instanceof Error ? fault.message : String(fault)}`);
      }
    }
  }
  console.info(`${ways.length} places bent, ${refused} refused`);
  expect(broken).toEqual([]);
}, 600_000);
