import { expect, test } from 'vitest';
import { type EntryDraft, entryName, entryText } from '../../src/writing/log-entry.ts';

const draft: EntryDraft = {
  date: '2026-03-14',
  chapter: 'benchwork',
  title: 'Routed',
  people: 2,
  minutes: 90,
  done: ['benchwork.rout', 'wiring.test-feeders'],
  made: ['side.front'],
  spent: '18.50 EUR',
  words: 'It fits.',
  hints: ['one\nline'],
};

test('an entry is front matter in the order people read it, then the words', () => {
  expect(entryText(draft)).toBe(
    '---\ndate: 2026-03-14\nchapter: benchwork\npeople: 2\nminutes: 90\ndone: [rout, wiring.test-feeders]\nmade: [side.front]\nspent: 18.50 EUR\n# one line\n---\n\nIt fits.\n',
  );
});

test('what was not said is not written', () => {
  const bare = { ...draft, people: null, minutes: null, done: [], made: [], spent: null, hints: [] };
  expect(entryText(bare)).toBe('---\ndate: 2026-03-14\nchapter: benchwork\n---\n\nIt fits.\n');
});

test('words that look like blocks, values or pictures stay words; letters nobody sees go', () => {
  const words = 'a :value[side] b\n::drawing{of=x}\n![x](http://x)\r\n12:30 and 1:87\u0000\u200b\u202e';
  expect(entryText({ ...draft, words })).toContain(
    'a \\:value[side] b\n\\:\\:drawing{of=x}\n\\![x](http://x)\n12:30 and 1:87\n',
  );
});

test('a name never clashes with one of the same day', () => {
  expect(entryName(draft, [])).toBe('2026-03-14-routed');
  expect(entryName(draft, ['2026-03-14-routed', '2026-03-14-routed-2'])).toBe('2026-03-14-routed-3');
  expect(entryName({ ...draft, title: 'Näch — ste!' }, [])).toBe('2026-03-14-nach-ste');
});
