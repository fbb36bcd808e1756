import { beforeAll, describe, expect, it } from 'vitest';
import type { CutSheet } from '../../../src/core/cutting/job.ts';
import { replay } from '../../../src/core/cutting/replay.ts';
import type { Notebook } from '../../../src/core/notebook.ts';
import { listDrawings } from '../../../src/drawing/list.ts';
import { loadContent } from '../../../src/reading/disk.ts';
import { openContent } from '../../../src/reading/open.ts';

let notebooks: readonly Notebook[] = [];

beforeAll(async () => {
  const files = await loadContent('content');
  const opened = openContent(files, (notebook) => listDrawings(notebook).map(({ id }) => id));
  notebooks = opened.notebooks.map(({ notebook }) => notebook);
});

/** Everything in which the saw's pieces are not the notebook's parts. */
function faultsOf({ parts, sheets }: Pick<Notebook, 'parts' | 'sheets'>): readonly string[] {
  const came = sheets.flatMap((sheet, i) => {
    const { faults, left, parts: pieces } = replay(sheet);
    const rest = [...sheet.offcuts, ...sheet.waste];
    const told = left.length === rest.length ? faults : [...faults, 'what is left is not what is printed'];
    return { told: told.map((what) => `sheet ${i + 1}: ${what}`), pieces };
  });
  const instances = came.flatMap(({ pieces }) => pieces.map(({ instance }) => instance ?? ''));
  const wanted = parts.filter(({ from, phase }) => phase === 'now' && from === undefined);
  const places = wanted.flatMap((part) => part.places.map(({ id }) => id));
  const sizes = sheets.flatMap((sheet) => sheet.parts.flatMap((place) => wrongSize(wanted, place)));
  const missing = places.filter((id) => !instances.includes(id)).map((id) => `${id} comes off no sheet`);
  const over = instances
    .filter((id, i) => !places.includes(id) || instances.indexOf(id) < i)
    .map((id) => `${id} twice`);
  return [...came.flatMap(({ told }) => told), ...missing, ...over, ...sizes];
}

function wrongSize(parts: Notebook['parts'], place: CutSheet['parts'][number]): readonly string[] {
  const blank = parts.find(({ id }) => id === place.part)?.blank;
  const [length, width] = place.turned ? [place.width, place.length] : [place.length, place.width];
  const right = blank !== undefined && Math.abs(blank.length - length) < 1e-4 && Math.abs(blank.width - width) < 1e-4;
  return right ? [] : [`${place.part} is cut ${length} by ${width}`];
}

describe('every sheet of the demo notebooks, cut as printed', () => {
  it('gives exactly the parts', () => {
    expect(notebooks.length).toBe(3);
    for (const notebook of notebooks) {
      expect(notebook.sheets.length, notebook.slug).toBeGreaterThan(1);
      expect(faultsOf(notebook), notebook.slug).toEqual([]);
    }
  });

  it('a cut left out, a setting misprinted or a part lost is noticed', () => {
    const [notebook] = notebooks;
    expect.assert(notebook !== undefined);
    const { parts, sheets } = notebook;
    const spoilt = (change: (sheet: CutSheet) => CutSheet) =>
      faultsOf({ parts, sheets: sheets.map((sheet, i) => (i === 1 ? change(sheet) : sheet)) });
    expect(spoilt((sheet) => ({ ...sheet, cuts: sheet.cuts.slice(0, -1) }))).not.toEqual([]);
    const off = (sheet: CutSheet) =>
      sheet.cuts.map((cut) => (cut.number === 7 ? { ...cut, setting: cut.setting + 1 } : cut));
    expect(spoilt((sheet) => ({ ...sheet, cuts: off(sheet) }))).not.toEqual([]);
    expect(spoilt((sheet) => ({ ...sheet, parts: sheet.parts.slice(1) }))).not.toEqual([]);
  });

  it('an offcut that a later chapter uses is as large as it was kept', () => {
    for (const { offcuts, sheets } of notebooks) {
      for (const { length, used, width } of offcuts) {
        const sheet = used === null ? null : sheets[used - 1];
        if (sheet !== null) expect([sheet?.length, sheet?.width]).toEqual([length, width]);
      }
    }
    expect(notebooks.flatMap(({ offcuts }) => offcuts).some(({ used }) => used !== null)).toBe(true);
  });

  it('buys what the bounds found', () => {
    for (const { bounds, shopping } of notebooks) {
      const laid = new Set(bounds.map(({ stock }) => stock));
      const lines = shopping.lines.filter(({ stock }) => stock !== null && laid.has(stock));
      const bought = lines.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0);
      expect(bought).toBe(bounds.reduce((sum, { found }) => sum + found, 0));
    }
  });

  it('shops for all chapters: wire by the metre with its slack, track by the length', () => {
    const [{ shopping, track, wiring } = { shopping: null, track: null, wiring: null }] = notebooks;
    expect.assert(shopping !== null && track !== null && wiring !== null);
    expect([...new Set(shopping.lines.flatMap((line) => line.for))].toSorted()).toEqual(
      ['benchwork', 'scenery', 'track', 'wiring'].toSorted(),
    );
    for (const stock of new Set(wiring.wires.map((wire) => wire.stock))) {
      const metres = shopping.lines.find((line) => line.stock === stock)?.quantity ?? 0;
      // each colour is a reel of its own, in whole metres
      const own = wiring.wires.filter((wire) => wire.stock === stock);
      const reels = [...new Set(own.map(({ colour }) => colour))].map((colour) =>
        own.reduce((sum, wire) => sum + (wire.colour === colour ? wire.length : 0), 0),
      );
      expect(metres).toBe(reels.reduce((sum, length) => sum + Math.ceil((length - 1e-6) / 1000), 0));
    }
    const flexible = shopping.lines.find(({ name }) => name.startsWith('Flexible track'));
    expect(flexible?.quantity).toBe(track.supplies.yards.length);
  });
});
