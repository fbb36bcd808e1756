import type { Part } from '../../src/core/stock/part.ts';
import { markExtent } from '../../src/drawing/block.ts';
import type { DrawingBook } from '../../src/drawing/book.ts';
import type { Dimension } from '../../src/drawing/dimension.ts';
import type { Drawing, DrawingSheet, DrawingUnit } from '../../src/drawing/drawing.ts';
import { crosses, overlap } from '../../src/drawing/labels.ts';
import type { Straight } from '../../src/drawing/lines-near.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import type { Extent, Mark, TextMark } from '../../src/drawing/mark.ts';
import { frameOf, type PaperName } from '../../src/drawing/paper.ts';
import { extentOfSeen, fromAbove, placedParts, seen } from '../../src/drawing/scene.ts';
import { textBox } from '../../src/drawing/text.ts';
import { titleBlockSize } from '../../src/drawing/title-block.ts';
import { paperX, paperY } from '../../src/drawing/view.ts';
import { recovered } from './recover.ts';

/** What is wrong with a drawing, one sentence a fault; empty for a good one. */
export type Complaint = string;

const near = 0.05;

function texts(sheet: DrawingSheet): readonly TextMark[] {
  return sheet.marks.filter((mark) => mark.kind === 'text');
}

/** Labels that lie over each other. */
export function overlappingLabels(sheet: DrawingSheet): readonly Complaint[] {
  const all = texts(sheet).map((mark) => ({ mark, box: textBox(mark) }));
  return all.flatMap((a, i) =>
    all
      .slice(i + 1)
      .filter((b) => overlap(a.box, b.box, near))
      .map((b) => `"${a.mark.text}" lies over "${b.mark.text}"`),
  );
}

function arcLines(mark: Extract<Mark, { kind: 'circle' | 'arc' }>): readonly Straight[] {
  const [from, to] = mark.kind === 'arc' ? [mark.from, mark.to] : [0, 2 * Math.PI];
  const at = (i: number) => {
    const turn = from + (i * (to - from)) / 16;
    return [mark.centre[0] + mark.radius * Math.cos(turn), mark.centre[1] + mark.radius * Math.sin(turn)] as const;
  };
  return Array.from({ length: 16 }, (_, i): Straight => [at(i), at(i + 1)]);
}

function strokes(mark: Mark): readonly Straight[] {
  if (mark.kind === 'text' || mark.pen === 'none') return [];
  if (mark.kind === 'line') return [[mark.from, mark.to]];
  if (mark.kind === 'circle' || mark.kind === 'arc') return arcLines(mark);
  const rings = mark.kind === 'polyline' ? [mark.points] : mark.rings;
  const isOpen = mark.kind === 'polyline';
  return rings.flatMap((ring) =>
    ring.flatMap((a, i): readonly Straight[] => {
      const b = ring[i + 1] ?? (isOpen ? undefined : ring[0]);
      return b === undefined ? [] : [[a, b]];
    }),
  );
}

function shrunk(box: Extent, by: number): Extent {
  return { x0: box.x0 + by, y0: box.y0 + by, x1: box.x1 - by, y1: box.y1 - by };
}

function holdsBox(outer: Extent, inner: Extent): boolean {
  return outer.x0 <= inner.x0 && outer.x1 >= inner.x1 && outer.y0 <= inner.y0 && outer.y1 >= inner.y1;
}

/** A filled disc or a filled area without an edge: what was drawn before it is out of sight. */
function isGround(mark: Mark): boolean {
  return (
    (mark.kind === 'circle' && mark.fill === 'paper') ||
    (mark.kind === 'polygon' && mark.pen === 'none' && mark.fill !== 'none')
  );
}

/** Lines that run through a label; a label on its own filled disc hides what was drawn before the disc. */
export function crossedLabels(sheet: DrawingSheet): readonly Complaint[] {
  const lines = sheet.marks.map((mark) => ({ mark, box: markExtent(mark), lines: strokes(mark) }));
  return texts(sheet).flatMap((text) => {
    const box = shrunk(textBox(text), near);
    const disc = sheet.marks.findLastIndex(
      (mark) => isGround(mark) && holdsBox(markExtent(mark), shrunk(textBox(text), 0.6)),
    );
    return lines
      .filter(
        ({ box: other }, index) =>
          index > disc &&
          overlap(box, {
            ...other,
            x0: other.x0 - near,
            x1: other.x1 + near,
            y0: other.y0 - near,
            y1: other.y1 + near,
          }),
      )
      .filter(({ lines: found }) => found.some((line) => crosses(line, box)))
      .map(({ mark }) => `a ${mark.role} line crosses "${text.text}"`);
  });
}

/** Sheets without a bar in the filing margin that shows whether the print is true to scale: 50 mm, or 2 in. */
export function scaleBarFaults(sheet: DrawingSheet, paper: PaperName): readonly Complaint[] {
  const marks = sheet.marks.filter(({ role }) => role === 'scale-bar');
  const frame = frameOf(paper);
  const margin: Extent = { x0: 5, x1: frame.x0, y0: frame.y0, y1: frame.y1 + near };
  const outside = marks.filter((mark) => !holdsBox(margin, markExtent(mark)));
  const boxes = marks.filter(({ kind }) => kind === 'line').map(markExtent);
  const [meant, says] = sheet.unit === 'mm' ? [50, '50 mm'] : [2 * 25.4, '2 in'];
  const isTrue = boxes.some(({ y0, y1 }) => Math.abs(y1 - y0 - meant) < 0.005);
  const isSaid = marks.some((mark) => mark.kind === 'text' && mark.text.includes(says));
  return [
    ...outside.map(() => 'the scale bar leaves the filing margin'),
    ...(isTrue ? [] : [`no scale bar is ${says} long`]),
    ...(isSaid ? [] : [`no words say that the bar is ${says} long`]),
  ];
}

/** Marks beyond the frame or in the title block, which holds its own words and no others; the scale bar has its own check. */
export function clipped(sheet: DrawingSheet, paper: PaperName): readonly Complaint[] {
  const frame = frameOf(paper);
  const block: Extent = { ...frame, x0: frame.x1 - titleBlockSize.width, y0: frame.y1 - titleBlockSize.height };
  const isOurs = (box: Extent) =>
    holdsBox({ x0: block.x0 - near, y0: block.y0 - near, x1: block.x1 + near, y1: block.y1 + near }, box);
  const within = sheet.marks.filter(({ role }) => role !== 'scale-bar');
  return within.flatMap((mark): readonly Complaint[] => {
    const box = markExtent(mark);
    const name = mark.kind === 'text' ? `"${mark.text}"` : `a ${mark.role} ${mark.kind}`;
    if (!holdsBox({ x0: frame.x0 - near, y0: frame.y0 - near, x1: frame.x1 + near, y1: frame.y1 + near }, box))
      return [`${name} lies beyond the frame`];
    if (mark.role === 'frame' || isOurs(box)) return [];
    return overlap(box, block, near) ? [`${name} lies in the title block`] : [];
  });
}

/** A printed figure as mm; NaN when it is no figure. */
export function readFigure(text: string, unit: DrawingUnit): number {
  if (unit === 'mm') return Number(text);
  if (/^-?\d*\.\d+$/.test(text)) return 25.4 * Number(text);
  const pieces = /^(-?)(?:(\d+) )?(?:(\d+)\/(\d+)|(\d+))[+-]?$/.exec(text);
  if (pieces === null) return Number.NaN;
  const [, sign, whole, top, bottom, alone] = pieces;
  const inches = Number(whole ?? 0) + (top === undefined ? Number(alone) : Number(top) / Number(bottom));
  return 25.4 * (sign === '-' ? -inches : inches);
}

/** How far a printed figure may be from the truth: half a step for each of its two rounded ends. */
export function printedWithin(unit: DrawingUnit): number {
  return (unit === 'mm' ? 0.1 : 25.4 / 32) + 1e-6;
}

function isAlongX({ ends }: Dimension): boolean {
  return ends !== null && Math.abs(ends[0][0] - ends[1][0]) >= Math.abs(ends[0][1] - ends[1][1]);
}

/** Figures whose lines don't end where the view puts their ordinates, or that say another length. */
export function falseFigures(sheet: DrawingSheet): readonly Complaint[] {
  return sheet.dimensions.flatMap((dimension): readonly Complaint[] => {
    if (dimension.between === null || dimension.ends === null) return [];
    const [from, to] = dimension.between;
    const said = readFigure(dimension.text, sheet.unit);
    const wrong =
      Math.abs(said - (to - from)) <= printedWithin(sheet.unit)
        ? []
        : [`${dimension.text} is printed for ${to - from} mm`];
    const view = sheet.views.find(({ name }) => name === dimension.view);
    if (view === undefined) return [...wrong, `${dimension.text} has no view`];
    const along = isAlongX(dimension);
    const drawn = dimension.ends.map((spot) => (along ? spot[0] : spot[1]));
    const meant = [from, to].map((at) => (along ? paperX(view, at) : paperY(view, at)));
    const off = drawn.some((at, i) => Math.abs(at - (meant[i] ?? Number.NaN)) > 0.02);
    return off ? [...wrong, `the lines of ${dimension.text} end beside what they measure`] : wrong;
  });
}

/** Angles and radii that are drawn otherwise than they are printed: read back from where their lines end. */
export function falseTurns(sheet: DrawingSheet): readonly Complaint[] {
  return sheet.dimensions.flatMap(({ measure, text, about, ends, view: name }): readonly Complaint[] => {
    if (about === undefined || ends === null) return [];
    const view = sheet.views.find((one) => one.name === name);
    const [a, b] = ends.map(([x, y]) => [x - about[0], y - about[1]] as const);
    if (view === undefined || a === undefined || b === undefined) return [`${text} has no view`];
    if (measure === 'radius') {
      const drawn = Math.hypot(b[0], b[1]) * view.scale;
      return Math.abs(drawn - readFigure(text, sheet.unit)) <= printedWithin(sheet.unit)
        ? []
        : [`the arc of R ${text} is drawn with ${drawn}`];
    }
    const turn = Math.abs(Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])) * (180 / Math.PI);
    return Math.abs(turn - Number.parseFloat(text)) <= 0.051 ? [] : [`${text} is drawn as ${turn}`];
  });
}

/** Dimensions whose figure is nowhere on the sheet. */
export function missingFigures(sheet: DrawingSheet): readonly Complaint[] {
  const words = texts(sheet).map(({ text }) => text.replaceAll('\u00a0', ' '));
  return sheet.dimensions
    .filter(({ text, ends, measure }) => {
      if (ends === null) return !words.some((line) => line.includes(text));
      return !words.includes(measure === 'radius' ? `R ${text}` : text);
    })
    .map(({ text, measure }) => `${measure} ${text} is not printed`);
}

function chainsOf(sheet: DrawingSheet): ReadonlyMap<string, readonly Dimension[]> {
  const chains = new Map<string, Dimension[]>();
  for (const dimension of sheet.dimensions) {
    if (dimension.chain === null) continue;
    const key = `${dimension.view}: ${dimension.chain}`;
    chains.set(key, [...(chains.get(key) ?? []), dimension]);
  }
  return chains;
}

/** Between which lengths the truth lies that a printed figure stands for, mm; in millimetres the figure itself. */
function printedRange(text: string, unit: DrawingUnit): readonly [number, number] {
  const said = readFigure(text, unit);
  const [near, far] = [25.4 / 128, 25.4 / 64];
  if (unit === 'mm') return [said, said];
  if (text.endsWith('+')) return [said + near, said + far];
  if (text.endsWith('-')) return [said - far, said - near];
  const off = text.includes('.') ? 0.0005 * 25.4 : near;
  return [said - off, said + off];
}

/** What links come to as printed: in inches from the least to the most that their figures allow. */
function sumRange(links: readonly Dimension[], unit: DrawingUnit): readonly [number, number] {
  const ranges = links.map(({ text }) => printedRange(text, unit));
  return [ranges.reduce((sum, [low]) => sum + low, 0), ranges.reduce((sum, [, high]) => sum + high, 0)];
}

/** Inch figures that print one length in two ways on a sheet. */
export function unevenFigures(sheet: DrawingSheet): readonly Complaint[] {
  if (sheet.unit === 'mm') return [];
  const printed = new Map<number, string>();
  return sheet.dimensions.flatMap(({ between, text, chain }): readonly Complaint[] => {
    if (between === null || chain === null) return [];
    const length = Math.round((between[1] - between[0]) * 100);
    const before = printed.get(length) ?? text;
    printed.set(length, before);
    return before === text ? [] : [`${length / 100} mm is printed as ${before} and as ${text}`];
  });
}

/** Chains whose links, added as printed, don't give the printed whole, or that leave a gap. */
export function openChains(sheet: DrawingSheet): readonly Complaint[] {
  const chains = chainsOf(sheet);
  return [...chains].flatMap(([name, links]): readonly Complaint[] => {
    const ordered = links.toSorted((a, b) => (a.between?.[0] ?? 0) - (b.between?.[0] ?? 0));
    const gaps = ordered
      .slice(1)
      .filter((link, i) => Math.abs((link.between?.[0] ?? 0) - (ordered[i]?.between?.[1] ?? 0)) > 1e-9);
    const whole = chains.get(`${name} whole`);
    const [low, high] = sumRange(links, sheet.unit);
    const [least, most] = whole === undefined ? [low, high] : sumRange(whole, sheet.unit);
    const closes = low <= most + 1e-6 && least <= high + 1e-6;
    return [
      ...gaps.map(() => `chain ${name} has a gap`),
      ...(closes ? [] : [`chain ${name} adds up to ${low} to ${high} and not ${least} to ${most}`]),
    ];
  });
}

/** The same place measured twice in one view. */
export function repeatedFigures(sheet: DrawingSheet): readonly Complaint[] {
  const seen = new Set<string>();
  return sheet.dimensions.flatMap((dimension): readonly Complaint[] => {
    if (dimension.between === null || dimension.of.length === 0) return [];
    return dimension.of.flatMap((id) => {
      const key = `${dimension.measure} of ${id}`;
      if (seen.has(key)) return [`${key} is dimensioned twice`];
      seen.add(key);
      return [];
    });
  });
}

/** Whether a number stands on the drawing and again, followed by the whole label, in the list of names. */
function isKeyed(drawing: Drawing, label: string): boolean {
  const words = drawing.sheets.flatMap((sheet) => texts(sheet).map(({ text }) => text));
  const list = words.slice(words.indexOf('Names') + 1).join(' ');
  const solid = (text: string) => text.replaceAll(/\s/g, '');
  const keys = words.filter((word) => /^\(\d+\)$/.test(word));
  return keys.some((key) => {
    const isDrawn = keys.filter((one) => one === key).length >= 2;
    const told = list.split(`${key} `)[1];
    return isDrawn && told !== undefined && solid(told).startsWith(solid(label));
  });
}

/** Pieces that a plan of a bench draws without their label. */
export function unlabelled(drawing: Drawing, book: DrawingBook): readonly Complaint[] {
  if (!/^benchwork\..*plan$/.test(drawing.id)) return [];
  const words = new Set(drawing.sheets.flatMap((sheet) => texts(sheet).map(({ text }) => text)));
  const bench = listDrawings(book).find(({ id }) => id === drawing.id)?.of;
  return book.parts
    .filter((part) => part.bench === bench && ['side', 'end', 'strut'].includes(part.role))
    .flatMap(({ places }) => places)
    .filter(({ label }) => !words.has(label) && !isKeyed(drawing, label))
    .map(({ label, id }) => `${drawing.id} ${drawing.unit}: ${id} stands without its label ${label}`);
}

/** Frame pieces whose faces can't be found by adding up the plan's printed chains from the frame's outside. */
export function unplaced(drawing: Drawing, book: DrawingBook): readonly Complaint[] {
  if (!/^benchwork\..*plan$/.test(drawing.id)) return [];
  const bench = listDrawings(book).find(({ id }) => id === drawing.id)?.of;
  const frame = placedParts(
    book.parts.filter((part) => part.bench === bench && ['side', 'end', 'strut'].includes(part.role)),
  );
  const links = (name: string) =>
    drawing.dimensions
      .filter(({ chain }) => chain === name)
      .toSorted((a, b) => (a.between?.[0] ?? 0) - (b.between?.[0] ?? 0));
  // an inch figure with its + or - says between which lengths the link lies, and so does a sum of them
  const sums = (name: string) => {
    const all = links(name);
    return Array.from({ length: all.length + 1 }, (_, i) => sumRange(all.slice(0, i), drawing.unit));
  };
  const within = printedWithin(drawing.unit);
  return frame.flatMap((one) => {
    const { low, high } = extentOfSeen(seen(one, fromAbove));
    const axis = high[0] - low[0] < high[1] - low[1] ? 0 : 1;
    const found = sums(axis === 0 ? 'bays along' : 'bays across');
    return [low[axis], high[axis]]
      .filter((face) => !found.some(([least, most]) => face >= least - within && face <= most + within))
      .map((face) => `${drawing.id} ${drawing.unit}: no chain leads to the face of ${one.place.id} at ${face}`);
  });
}

/** Everything that can be wrong with a drawing's sheets as such. */
export function complaints(drawing: Drawing, paper: PaperName): readonly Complaint[] {
  return drawing.sheets.flatMap((sheet) =>
    [
      ...overlappingLabels(sheet),
      ...crossedLabels(sheet),
      ...clipped(sheet, paper),
      ...scaleBarFaults(sheet, paper),
      ...falseFigures(sheet),
      ...falseTurns(sheet),
      ...missingFigures(sheet),
      ...openChains(sheet),
      ...unevenFigures(sheet),
      ...repeatedFigures(sheet),
      ...texts(sheet)
        .filter(({ size }) => size < 2.5)
        .map(({ text }) => `"${text}" is too small`),
    ].map((complaint) => `${drawing.id} ${sheet.unit} ${paper} ${sheet.sheet}/${sheet.of}: ${complaint}`),
  );
}

/** Features that can't be marked out from the printed figures alone. */
export function unfixed(drawing: Drawing, part: Part): readonly Complaint[] {
  const all = drawing.sheets.flatMap((sheet) => sheet.dimensions);
  const figures = all.map(({ measure, of, text }) => ({
    measure,
    of,
    value: measure === 'angle' ? Number.parseFloat(text) : readFigure(text, drawing.unit),
  }));
  return recovered(part, figures, printedWithin(drawing.unit)).map(
    (complaint) => `${drawing.id} ${drawing.unit}: ${complaint}`,
  );
}
