import { describe, expect, test } from 'vitest';
import { compute, type Notebook } from '../../../src/core/notebook.ts';
import type { Plan } from '../../../src/core/plan.ts';
import { layOutDrawing } from '../../../src/drawing/layout.ts';
import { loadContent } from '../../../src/reading/disk.ts';
import { readContent } from '../../../src/reading/read.ts';
import { notebookJson } from '../../../src/writing/notebook-json.ts';

const files = await loadContent(new URL('../../../content', import.meta.url).pathname);

/** The demo with one text of its scenery changed. */
function demo(change: readonly [from: string, to: string] | null): Notebook {
  const changed = files.map((file) => {
    if (change === null || !file.path.endsWith('bittern-basin/scenery.md')) return file;
    const text = new TextDecoder().decode(file.bytes);
    expect(text).toContain(change[0]);
    const bytes = new TextEncoder().encode(text.replaceAll(change[0], change[1]));
    return { ...file, bytes, size: bytes.length };
  });
  const plan = readContent(changed).plans.find(({ slug }: Plan) => slug === 'bittern-basin');
  if (plan === undefined) throw new Error('the demo was not read');
  const result = compute(plan);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

const as = demo(null);
const raised = demo(['height: 150 mm', 'height: 180 mm']);
// 114 mm to the left it is off the strut, but under the line
const moved = demo([
  '[560 mm, 60 mm], [900 mm, 60 mm], [900 mm, 330 mm], [560 mm, 330 mm]',
  '[446 mm, 60 mm], [786 mm, 60 mm], [786 mm, 330 mm], [446 mm, 330 mm]',
]);

// as the finding on the basin says: 226 mm by 270 mm from 560 mm, 60 mm
const smaller = demo([
  '[560 mm, 60 mm], [900 mm, 60 mm], [900 mm, 330 mm], [560 mm, 330 mm]',
  '[560 mm, 60 mm], [786 mm, 60 mm], [786 mm, 330 mm], [560 mm, 330 mm]',
]);

describe("the demo's chalk hill", () => {
  test('comes out as layers, a board, quantities and mass', () => {
    expect(as.scenery?.layers).toHaveLength(6);
    expect(as.parts.filter(({ role }) => role === 'profile-board').map(({ id }) => id)).toEqual(['board.back']);
    expect(as.scenery?.quantities.map(({ stock }) => stock)).toEqual(
      expect.arrayContaining(['xps-25', 'plaster-cloth', 'ground-foam', 'clear-resin', 'fine-ballast']),
    );
    expect(as.sheets.some(({ stock }) => stock === 'xps-25')).toBe(true);
    expect(as.scenery?.volumes.bought).toBeGreaterThan(as.scenery?.volumes.cut ?? Number.POSITIVE_INFINITY);
  });

  test('raised by 30 mm, all of it follows', () => {
    expect(raised.scenery?.highest).toBe(180);
    expect(raised.scenery?.layers).toHaveLength(8);
    const board = ({ parts }: Notebook) => parts.find(({ id }) => id === 'board.back')?.blank.width ?? 0;
    // the dome where the back edge cuts it: H (1 - 250^2 / 300^2)
    expect(board(as)).toBeCloseTo(150 * (1 - (250 / 300) ** 2), 1);
    expect(board(raised)).toBeCloseTo(180 * (1 - (250 / 300) ** 2), 1);
    const cloth = ({ scenery }: Notebook) =>
      scenery?.quantities.find(({ stock }) => stock === 'plaster-cloth')?.need ?? 0;
    expect(cloth(raised)).toBeGreaterThan(cloth(as));
    expect(raised.scenery?.volumes.left).toBeGreaterThan(as.scenery?.volumes.left ?? Number.POSITIVE_INFINITY);
  });
});

describe("the demo's basin", () => {
  const notch = ({ parts }: Notebook) =>
    parts
      .filter(({ role }) => role === 'strut')
      .flatMap((part) =>
        part.features.filter((feature) => feature.for === 'basin').map((feature) => [part.id, feature.kind]),
      );
  const told = ({ findings }: Notebook) =>
    findings.filter(({ rule }) => rule === 'notch-long' || rule === 'water-cuts-frame');
  const strut = (notebook: Notebook) =>
    notebook.parts.find(({ places }) => places.some(({ id }) => id === 'strut.across-2'));

  const drawn = (notebook: Notebook, part: string) =>
    layOutDrawing(notebook, `part.${part}`, { unit: 'mm', paper: 'A4' })
      .sheets.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
      .join(' ');

  test('cuts the deck and strut.across-2, with its limit a care and no order on the drawing', () => {
    expect(notch(as)).toEqual([['strut.across-2', 'notch']]);
    expect(told(as).map(({ level }) => level)).toEqual(['care', 'care']);
    expect(drawn(as, 'strut.across-2')).not.toContain('keep within');
    expect(as.requests.filter(({ by }) => by === 'basin').map(({ kind, part }) => `${kind} ${part}`)).toEqual([
      'notch strut.across-2',
      'cut-out deck.1',
    ]);
  });

  test('leaves the assembly and the sheets proved', () => {
    expect(as.findings.filter(({ level }) => level === 'halt')).toEqual([]);
    expect(as.assembly.length).toBeGreaterThan(0);
    const places = as.sheets.flatMap(({ parts }) => parts.map(({ part }) => part));
    expect(places).toContain('strut.across-2');
  });

  test('moved off the strut, the notch is gone everywhere', () => {
    expect(notch(moved)).toEqual([]);
    expect(told(moved)).toEqual([]);
    expect(moved.requests.filter(({ by, kind }) => by === 'basin' && kind === 'notch')).toEqual([]);
    expect(strut(moved)?.features.some((feature) => feature.for === 'basin')).toBe(false);
    const json = notebookJson(moved);
    const asked = JSON.parse(json).requests.filter((one: { readonly by: string }) => one.by === 'basin');
    expect(asked).toHaveLength(1);
    // what the log says of the cut that was made stays
    expect(drawn(as, 'strut.across-2')).toContain('basin notch');
    expect(drawn(moved, 'strut.across-2')).not.toContain('basin notch');
    // and the assembly and the sheets are proved as before; only the line that now crosses the water wants a bridge
    const halts = moved.findings.filter(({ level }) => level === 'halt').map(({ rule, where }) => `${rule} ${where}`);
    expect([...new Set(halts)]).toEqual(['line-over-water main']);
    expect(moved.sheets.flatMap(({ parts }) => parts.map(({ part }) => part))).toContain('strut.across-2');
  });

  test('made as small as its finding says, it cuts nothing but the deck, and every proof holds', () => {
    const clear = as.scenery?.water.find(({ id }) => id === 'basin')?.clear;
    // a move off the strut would put it under the line, so none is offered
    expect(clear?.move).toBeNull();
    expect(clear?.smaller).toEqual({ low: [560, 60], high: [786, 330] });
    expect(notch(smaller)).toEqual([]);
    expect(told(smaller)).toEqual([]);
    expect(smaller.findings.filter(({ level }) => level === 'halt')).toEqual([]);
    expect(drawn(smaller, 'strut.across-2')).not.toContain('basin notch');
  });

  test('has a tray of hardboard whose parts lie on a sheet and are made in its step', () => {
    const tray = as.parts.filter(({ role }) => role === 'tray').map(({ id }) => id);
    expect(tray).toEqual(['tray.basin-floor', ...[1, 2, 3, 4].map((side) => `tray.basin-wall-${side}`)]);
    const laid = as.sheets
      .filter(({ stock }) => stock === 'hardboard-3')
      .flatMap(({ parts }) => parts.map(({ part }) => part));
    expect(laid.toSorted()).toEqual(tray.toSorted());
    expect(as.steps.find(({ id }) => id === 'scenery.basin-tray')?.makes).toEqual(tray);
  });
});
