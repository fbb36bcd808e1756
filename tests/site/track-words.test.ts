import { describe, expect, test } from 'vitest';
import { layTrack } from '../../src/core/track/lay.ts';
import { blockHeading, roomBlocks } from '../../src/site/blocks.ts';
import type { Book } from '../../src/site/notebooks.ts';
import { radiusTable } from '../../src/site/radius-words.ts';
import type { Told } from '../../src/site/table.ts';
import { layingFacts, lengthTable, sectionTable, stretchTable } from '../../src/site/track-length-words.ts';
import { curve, line, oval, straight, track } from '../core/track/example.ts';
import { notebook } from './fixture.ts';

function bookOf(plan: ReturnType<typeof oval>): Book {
  return { notebook: { ...notebook, track: layTrack(plan).model, trackPlan: plan }, prose: [], photos: '' };
}

/** The words of a page's reader in mm. */
function plain(html: string): string {
  return html
    .replace(/<span class="in">.*?<\/span>/g, '')
    .replace(/<[^>]+>/g, '')
    .replaceAll('\u00A0', ' ');
}

function rows(told: Told | null): readonly (readonly string[])[] {
  return (told?.rows ?? []).map((row) => row.map(plain));
}

describe('room for larger curves', () => {
  test('each written radius with the largest, what follows and what stops it', () => {
    expect(rows(radiusTable(bookOf(oval())))).toEqual([
      [
        'main, piece 2',
        '380',
        '426.5',
        'main: piece 6, a radius of 426.5 mm',
        'the edge of the deck: main, at 3396.9 mm',
      ],
    ]);
  });

  test('too large as written, free on every side, or not written at all', () => {
    expect(rows(radiusTable(bookOf(oval({ radius: 440 }))))[0]?.[2]).toBe('426.5, smaller than written');
    const free = track([line('free', [curve('left', 300, 90)])]);
    expect(rows(radiusTable(bookOf(free)))).toEqual([
      ['free, piece 1', '300', 'any', 'nothing', 'nothing up to four times as large'],
    ]);
    expect(radiusTable(bookOf(track([line('rail', [straight(500)])])))).toBeNull();
    expect(radiusTable({ notebook, prose: [], photos: '' })).toBeNull();
  });
});

describe('track to cut', () => {
  const { supplies } = layTrack(oval()).model;

  test('stretches, and lengths that together hold every one of them', () => {
    expect(rows(stretchTable(supplies)).map(([own]) => own)).toEqual(['main', 'main', 'siding']);
    const cut = rows(lengthTable(supplies)).flatMap(([, cuts]) => cuts?.split(', ') ?? []);
    const sum = cut.reduce((all, words) => all + Number.parseFloat(words), 0);
    const laid = rows(stretchTable(supplies)).reduce((all, [, , length]) => all + Number(length), 0);
    expect(Math.abs(sum - laid)).toBeLessThan(0.1 * cut.length);
    expect(cut).toContain('200 mm for siding at 0 mm');
  });

  test('ready-made pieces by kind, and what lies under the sleepers', () => {
    const ring = layTrack(
      track([line('ring', [curve('left', 457.2, 30, { times: 12 }), straight(100, { times: 2 })])]),
    );
    expect(rows(sectionTable(ring.model.supplies))).toEqual([
      ['curve, radius 457.2 mm, 30°', '12'],
      ['straight, 100 mm', '2'],
    ]);
    expect(layingFacts(supplies).map(([name, words]) => `${name}: ${plain(words)}`)).toEqual([
      'Roadbed: 4019.6 mm of cork-3, 25 mm wide: 5 strips from 1 sheet',
      'Pins: 27, one about every 150 mm',
      'Loose ballast: about 161 cm³',
    ]);
  });

  test('both stand on the track’s page', () => {
    const names = roomBlocks(bookOf(oval()), 'track');
    expect(names).toEqual(expect.arrayContaining(['track-lengths', 'radii']));
    expect(names.map(blockHeading)).toContain('Track to cut');
  });
});
