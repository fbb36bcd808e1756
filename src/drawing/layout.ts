import { bayLayout } from './bays/bay-drawing.ts';
import { benchLayout } from './bench-drawing.ts';
import type { BenchViewKind } from './bench-stage.ts';
import { benchWords } from './bench-words.ts';
import { type Block, emptyBlock } from './block.ts';
import type { DrawingBook } from './book.ts';
import { cuttingLayout } from './cutting-drawing.ts';
import type { Drawing, DrawingOptions, DrawingSheet } from './drawing.ts';
import { fixLayout } from './fixes/fix-map.ts';
import { fixNotes } from './fixes/fix-notes.ts';
import { assemblyLayout, assemblyPictures } from './isometric/assembly-drawing.ts';
import { jointGroups, jointLayout, jointWords } from './joint-drawing.ts';
import { type DrawingEntry, type DrawingKind, entriesOf, type Listed } from './list.ts';
import type { Mark } from './mark.ts';
import { type Keyed, keyedNames, nameKeys } from './name-keys.ts';
import { frameOf, papers } from './paper.ts';
import { partLayout } from './part-drawing.ts';
import { pilotNotes } from './part-pilots.ts';
import { screwBlocks } from './part-screws.ts';
import { scaleBarMarks } from './scale-bar.ts';
import { boardLayout } from './scenery/board-drawing.ts';
import { landLayout } from './scenery/land-drawings.ts';
import { layerLayout } from './scenery/layer-drawing.ts';
import { requestNotes } from './scenery/request-notes.ts';
import { onSheets } from './sheet.ts';
import { titleBlockMarks } from './title-block.ts';
import { trackLayout } from './track/track-drawings.ts';
import { wiringLayout } from './wiring/wiring-drawings.ts';

/** What a drawing is made of before it is put on paper. */
export type DrawingContent = {
  readonly blocks: readonly Block[];
  /** null for a diagram that is drawn to none */
  readonly scale: number | null;
  readonly desc: string;
};

const documentTypes: Readonly<Record<DrawingKind, string>> = {
  plan: 'Arrangement',
  elevation: 'Arrangement',
  section: 'Arrangement',
  part: 'Part drawing',
  sheet: 'Cutting layout',
  joint: 'Joint detail',
  assembly: 'Assembly',
  fixes: 'Fix map',
  wiring: 'Wiring diagram',
};

function benchView(id: string): BenchViewKind {
  const kinds: readonly BenchViewKind[] = ['plan', 'deck', 'front', 'left', 'section'];
  return kinds.find((kind) => id.endsWith(`.${kind}`)) ?? 'plan';
}

/** What is listed, and the notebook as views of many pieces name them: long labels by numbers. */
type Laid = Listed & { readonly keyed: Keyed };

function contentOf(
  { notebook, pictures, joints, keyed }: Laid,
  entry: DrawingEntry,
  options: DrawingOptions,
): DrawingContent {
  if (entry.kind === 'part') {
    const part = notebook.parts.find(({ id }) => id === entry.of);
    if (part?.role === 'layer') return layerLayout(notebook, part, options);
    if (part?.role === 'profile-board') return boardLayout(part, options);
    if (part !== undefined)
      return partLayout(part, options, {
        screwsAt: (scale) => screwBlocks(notebook, part, { scale, options }),
        notes: [pilotNotes, requestNotes, fixNotes].flatMap((notes) => notes(notebook, part, options.unit)),
      });
  }
  if (entry.kind === 'sheet') {
    const sheet = notebook.sheets[Number(entry.id.slice('sheet.'.length)) - 1];
    if (sheet !== undefined) return cuttingLayout(notebook, sheet, options);
  }
  const fixes = entry.kind === 'fixes' ? fixLayout(keyed.book, entry.id, options) : null;
  if (fixes !== null) return fixes;
  const rails = entry.chapter === 'track' ? trackLayout(notebook, entry.id, options) : null;
  if (rails !== null) return rails;
  const land = entry.chapter === 'scenery' ? landLayout(notebook, entry.id, options) : null;
  if (land !== null) return land;
  const wires = entry.kind === 'wiring' ? wiringLayout(notebook, entry.id, options) : null;
  if (wires !== null) return wires;
  const picture = entry.kind === 'assembly' ? pictures.find(({ id }) => id === entry.id) : undefined;
  if (picture !== undefined) return withNames({ ...assemblyLayout(picture, options), desc: picture.desc }, keyed);
  const group = joints.find(({ first }) => entry.kind === 'joint' && first.id === entry.of);
  if (group !== undefined) {
    const desc = jointWords(notebook, group, options.unit);
    return withNames({ ...jointLayout(keyed.book, group, options), desc }, keyed);
  }
  const bay = entry.kind === 'section' ? bayLayout(keyed.book, entry.id, options) : null;
  if (bay !== null) return withNames(bay, keyed);
  const bench = notebook.benches.find(({ id }) => id === entry.of);
  if (bench !== undefined) {
    const kind = benchView(entry.id);
    const desc = benchWords(notebook, bench, { kind, unit: options.unit });
    return withNames({ ...benchLayout(keyed.book, bench, { kind, options }), desc }, keyed);
  }
  return { blocks: [], scale: 10, desc: entry.title };
}

function withNotes(content: DrawingContent, notes: readonly Block[]): DrawingContent {
  return { ...content, blocks: [...content.blocks, ...notes] };
}

function withNames(content: DrawingContent, { names }: Keyed): DrawingContent {
  return withNotes(content, keyedNames(names, content.blocks));
}

function frameMark({ paper }: DrawingOptions): Mark {
  const { x0, y0, x1, y1 } = frameOf(paper);
  return {
    kind: 'polygon',
    rings: [
      [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ],
    ],
    fill: 'none',
    pen: 'frame',
    role: 'frame',
  };
}

type Paper = { readonly entry: DrawingEntry; readonly content: DrawingContent; readonly options: DrawingOptions };
type Numbered = { readonly sheet: number; readonly of: number };

function titleMarks(notebook: DrawingBook, { entry, content, options }: Paper, numbered: Numbered): readonly Mark[] {
  const block = {
    owner: notebook.makers.join(', '),
    title: notebook.title,
    subtitle: entry.title,
    type: documentTypes[entry.kind],
    number: entry.id,
    scale: content.scale,
    unit: options.unit,
    paper: options.paper,
    ...numbered,
  };
  return titleBlockMarks(block, frameOf(options.paper));
}

function sheetOf(notebook: DrawingBook, paper: Paper, filled: Block & Numbered): DrawingSheet {
  const { entry, content, options } = paper;
  const { sheet, of, marks, views, dimensions } = filled;
  return {
    id: entry.id,
    unit: options.unit,
    title: entry.title,
    desc: content.desc,
    ...papers[options.paper],
    scale: content.scale,
    sheet,
    of,
    marks: [frameMark(options), ...scaleBarMarks(options), ...titleMarks(notebook, paper, { sheet, of }), ...marks],
    own: marks,
    views,
    dimensions,
  };
}

/** All drawings of a notebook: what they share is worked out once, each is laid out when it is asked for. */
export type DrawingSet = {
  readonly entries: readonly DrawingEntry[];
  /** throws a RangeError for an id that no entry has */
  readonly layOut: (id: string, options: DrawingOptions) => Drawing;
};

export function drawingSet(notebook: DrawingBook): DrawingSet {
  const own = assemblyPictures(notebook);
  const keyed = nameKeys(notebook);
  // titles keep the whole names, the pictures themselves their numbers
  const numbered = assemblyPictures(keyed.book).map((one, i) => ({ ...one, title: own[i]?.title ?? one.title }));
  const pictures = keyed.names.length === 0 ? own : numbered;
  const listed: Laid = { notebook, pictures, joints: jointGroups(notebook), keyed };
  const entries = entriesOf(listed);
  const layOut = (id: string, options: DrawingOptions): Drawing => {
    const entry = entries.find((one) => one.id === id);
    if (entry === undefined) throw new RangeError(`no drawing ${id}`);
    return laidOut(listed, entry, options);
  };
  return { entries, layOut };
}

/**
 * Lays one drawing out for a unit and a paper: pure, the same answer each time. Throws a RangeError for an id that
 * listDrawings does not give.
 */
export function layOutDrawing(notebook: DrawingBook, id: string, options: DrawingOptions): Drawing {
  return drawingSet(notebook).layOut(id, options);
}

function laidOut(listed: Laid, entry: DrawingEntry, options: DrawingOptions): Drawing {
  const { notebook } = listed;
  const content = contentOf(listed, entry, options);
  const [block = emptyBlock, ...more] = onSheets(content.blocks, options.paper);
  const paper: Paper = { entry, content, options };
  const of = more.length + 1;
  const first = sheetOf(notebook, paper, { ...block, sheet: 1, of });
  const others = more.map((one, i) => sheetOf(notebook, paper, { ...one, sheet: i + 2, of }));
  return { ...first, sheets: [first, ...others] };
}
