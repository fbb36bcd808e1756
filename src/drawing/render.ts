import { registerWindow, SVG, type Svg } from '@svgdotjs/svg.js';
import type { DrawingSheet } from './drawing.ts';
import type { Mark, Spot, TextMark } from './mark.ts';
import { scaleText } from './paper.ts';
import { drawingStyles, pens } from './pens.ts';
import { emOf, textWidth } from './text.ts';
import type { DrawingDocument } from './window.ts';

type Attributes = Record<string, string>;

/** Rounded to 0.01 mm, the last step before a number becomes text. */
export function rounded(value: number): string {
  const hundredths = Math.round(value * 100) / 100;
  return String(hundredths === 0 ? 0 : hundredths);
}

function place([x, y]: Spot): string {
  return `${rounded(x)} ${rounded(y)}`;
}

function ring(points: readonly Spot[]): string {
  return `M${points.map(place).join('L')}Z`;
}

function arcPath(mark: Extract<Mark, { kind: 'arc' }>): string {
  const at = (angle: number): Spot => [
    mark.centre[0] + mark.radius * Math.cos(angle),
    mark.centre[1] + mark.radius * Math.sin(angle),
  ];
  const large = mark.to - mark.from > Math.PI ? 1 : 0;
  const radius = rounded(mark.radius);
  return `M${place(at(mark.from))}A${radius} ${radius} 0 ${large} 1 ${place(at(mark.to))}`;
}

function textAttributes(mark: TextMark): Attributes {
  const [x, y] = mark.at;
  const turned: Attributes = mark.turn === 'right' ? { transform: `rotate(-90 ${place(mark.at)})` } : {};
  return {
    x: rounded(x),
    y: rounded(y),
    'font-size': rounded(emOf(mark.size)),
    ...(mark.weight === 'bold' ? { 'font-weight': '700' } : {}),
    ...(mark.anchor === 'start' ? {} : { 'text-anchor': mark.anchor }),
    ...(mark.text.length > 1
      ? { textLength: rounded(textWidth(mark.text, mark.size, mark.weight)), lengthAdjust: 'spacingAndGlyphs' }
      : {}),
    ...turned,
  };
}

function penAttributes(mark: Exclude<Mark, TextMark>): Attributes {
  const pen = pens[mark.pen];
  const fill = mark.kind === 'polygon' || mark.kind === 'circle' ? mark.fill : 'none';
  return {
    class: [
      `pen-${mark.pen}`,
      ...(fill === 'none' ? [] : [`fill-${fill}`]),
      ...(mark.role === 'scale-bar' ? ['scale-bar'] : []),
    ].join(' '),
    'stroke-width': String(pen.width),
    ...(pen.dash.length > 0 ? { 'stroke-dasharray': pen.dash.join(' ') } : {}),
  };
}

function shapeOf(mark: Exclude<Mark, TextMark>): readonly [string, Attributes] {
  switch (mark.kind) {
    case 'line':
      return ['path', { d: `M${place(mark.from)}L${place(mark.to)}` }];
    case 'polyline':
      return ['path', { d: `M${mark.points.map(place).join('L')}` }];
    case 'polygon':
      return ['path', { d: mark.rings.map(ring).join(''), 'fill-rule': 'evenodd' }];
    case 'circle':
      return ['circle', { cx: rounded(mark.centre[0]), cy: rounded(mark.centre[1]), r: rounded(mark.radius) }];
    case 'arc':
      return ['path', { d: arcPath(mark) }];
  }
}

/** Letters of either direction keep to their own box: the text is isolated from its neighbours. */
function isolated(text: string): string {
  return /[\u0590-\u08ff\ufb1d-\ufefc]/u.test(text) ? `\u2068${text}\u2069` : text;
}

/** Words before a scale, the scale, and words after it: `Seen on its face 1:10`. */
const scaled = /^((?:.* )?)(\d+:\d+)((?:,.*)?)$/;

/**
 * A scale that the sheet is drawn to and the bar that proves it have a class of their own: where a page prints a drawing
 * smaller, both are left out.
 */
function drawText(svg: Svg, mark: TextMark, says: ReadonlySet<string>): void {
  const [, before = '', scale = '', after = ''] = scaled.exec(mark.text) ?? [];
  if (mark.role === 'figure' || !says.has(scale)) {
    const own: Attributes = mark.role === 'scale-bar' ? { class: 'scale-bar' } : {};
    svg.element('text', { ...textAttributes(mark), ...own }).words(isolated(mark.text));
    return;
  }
  const line = svg.element('text', textAttributes(mark));
  if (before !== '') line.element('tspan').words(isolated(before));
  line.element('tspan', { class: 'scale-said' }).words(scale);
  if (after !== '') line.element('tspan').words(isolated(after));
}

function drawMark(svg: Svg, mark: Mark, says: ReadonlySet<string>): void {
  if (mark.kind === 'text') {
    drawText(svg, mark, says);
    return;
  }
  const [name, shape] = shapeOf(mark);
  svg.element(name, { ...shape, ...penAttributes(mark) });
}

/** The scales that a sheet may say it is drawn to. */
function scalesOf({ scale, views }: DrawingSheet): ReadonlySet<string> {
  return new Set([...views.map((view) => view.scale), ...(scale === null ? [] : [scale])].map(scaleText));
}

/** An id from the sheet's name, so that a drawing is the same bytes each time. */
export function drawingId(sheet: DrawingSheet): string {
  return `drawing-${sheet.id}-${sheet.unit}-${sheet.sheet}`.replace(/[^A-Za-z0-9-]/g, '-');
}

/** The sheet as SVG markup, drawn by svg.js into the document handed in; 1 unit of the viewBox is 1 mm of paper. */
export function renderDrawing(sheet: DrawingSheet, document: DrawingDocument): string {
  const id = drawingId(sheet);
  // svg.js keeps the window it draws into; it is set for each drawing so that no drawing depends on another.
  registerWindow(document.defaultView, document as Document);
  const svg = SVG(document.createElementNS('http://www.w3.org/2000/svg', 'svg')) as Svg;
  svg.attr({
    xmlns: 'http://www.w3.org/2000/svg',
    id,
    class: 'drawing',
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-desc`,
    width: `${rounded(sheet.width)}mm`,
    height: `${rounded(sheet.height)}mm`,
    viewBox: `0 0 ${rounded(sheet.width)} ${rounded(sheet.height)}`,
  });
  svg.element('title', { id: `${id}-title` }).words(sheet.title);
  svg.element('desc', { id: `${id}-desc` }).words(sheet.desc);
  svg.element('rect', { class: 'fill-paper', width: rounded(sheet.width), height: rounded(sheet.height) });
  const says = scalesOf(sheet);
  for (const mark of sheet.marks) drawMark(svg, mark, says);
  return svg.node.outerHTML;
}

/** The same drawing as a file of its own, with its stylesheet inside. */
export function standaloneDrawing(svg: string): string {
  return svg.replace('</desc>', () => `</desc><style>${drawingStyles.replaceAll('<', '&lt;')}</style>`);
}
