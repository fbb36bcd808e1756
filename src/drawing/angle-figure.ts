import { arrowhead, arrowLength, terminalDot } from './arrow.ts';
import { type Block, joined } from './block.ts';
import type { Dimension } from './dimension.ts';
import { ledFigure } from './led-figure.ts';
import type { Straight } from './lines-near.ts';
import type { Mark, Spot } from './mark.ts';
import { lettering, smallText, textWidth } from './text.ts';

/** An angle to be figured: its corner on paper and the directions of its sides, radians clockwise, `to` after `from`. */
export type Wedge = { readonly at: Spot; readonly from: number; readonly to: number };

/** How far from the corner the arc and the middle of its figure stand, and how far both reach; paper mm. */
export type WedgeRoom = { readonly arc: number; readonly figure: number; readonly reach: number };

/** Room for the figure between the sides: it stands in the wedge, the arc between it and the corner (ISO 129-1). */
export function wedgeRoom(text: string, angle: number): WedgeRoom {
  const round = Math.hypot(textWidth(text, smallText) / 2, 0.75 * smallText) + 0.8;
  const figure = Math.max(round / Math.sin(angle / 2), round + 6);
  return { arc: figure - round - 0.4, figure, reach: figure + round };
}

function onArc({ at: [x, y] }: Wedge, radius: number, angle: number): Spot {
  return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
}

function ends(wedge: Wedge, radius: number): readonly Mark[] {
  const [a, b] = [onArc(wedge, radius, wedge.from), onArc(wedge, radius, wedge.to)];
  if (radius * (wedge.to - wedge.from) < 2.5 * arrowLength) return [terminalDot(a), terminalDot(b)];
  const turn = arrowLength / radius;
  return [arrowhead(a, onArc(wedge, radius, wedge.from + turn)), arrowhead(b, onArc(wedge, radius, wedge.to - turn))];
}

/** How high a wedge is on paper, mm, where what it is of ends. */
type Bounded = Wedge & { readonly within: number };

/** Whether the figure stands inside the wedge; else it is led there. */
export function holdsFigure(text: string, angle: number, within: number): boolean {
  return wedgeRoom(text, angle).figure * Math.sin(angle / 2) + smallText <= within;
}

/** The arc without its figure. */
function arcMarks(wedge: Wedge, radius: number): readonly Mark[] {
  const { at: centre, from, to } = wedge;
  return [{ kind: 'arc', centre, radius, from, to, pen: 'dimension', role: 'dimension' }, ...ends(wedge, radius)];
}

/** Chords of the arc, for labels to keep off. */
function chords(wedge: Wedge, radius: number): readonly Straight[] {
  const spot = (i: number) => onArc(wedge, radius, wedge.from + ((wedge.to - wedge.from) * i) / 8);
  return Array.from({ length: 8 }, (_, i): Straight => [spot(i), spot(i + 1)]);
}

/** A drawing with an angle's arc and its figure, in the wedge or led to the arc; without them where there is no room. */
export function withAngle(drawn: Block, wedge: Bounded, fixes: Pick<Dimension, 'of' | 'text' | 'view'>): Block {
  const angle = wedge.to - wedge.from;
  const middle = (wedge.from + wedge.to) / 2;
  const room = wedgeRoom(fixes.text, angle);
  const isInside = holdsFigure(fixes.text, angle, wedge.within);
  const radius = isInside ? room.arc : Math.min(14, (0.8 * wedge.within) / Math.sin(angle));
  const [x, y] = onArc(wedge, room.figure, middle);
  const figure = isInside
    ? [lettering(fixes.text, [x, y + smallText / 2], { role: 'figure', anchor: 'middle' })]
    : ledFigure(drawn, { text: fixes.text, to: onArc(wedge, radius, middle), clear: chords(wedge, radius) });
  if (figure.length === 0) return drawn;
  const dimension: Dimension = {
    ...fixes,
    measure: 'angle',
    between: null,
    ends: [onArc(wedge, radius, wedge.from), onArc(wedge, radius, wedge.to)],
    about: wedge.at,
    chain: null,
  };
  return joined(drawn, { marks: [...arcMarks(wedge, radius), ...figure], views: [], dimensions: [dimension] });
}
