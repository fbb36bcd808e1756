import type { DrawingOptions, DrawingUnit } from './drawing.ts';
import type { Mark, Spot } from './mark.ts';
import { frameOf } from './paper.ts';
import { lettering } from './text.ts';

/** The bar's length on paper in mm, its divisions, and its words. */
type Bar = { readonly length: number; readonly parts: number; readonly words: string };

const bars: Readonly<Record<DrawingUnit, Bar>> = {
  mm: { length: 50, parts: 5, words: 'Print at 100 %: this bar is 50 mm.' },
  in: { length: 50.8, parts: 4, words: 'Print at 100 %: this bar is 2 in.' },
};

/** Half a tick's length at the ends and between them, mm. */
const END = 1.5;
const PART = 0.8;

/**
 * A bar of known length upright in the filing margin, where every printer prints and no hole is punched (ISO 838: the
 * holes of a sheet 210 mm high are 65 mm from its edges): whoever measures it knows whether the print is true to scale.
 */
export function scaleBarMarks({ unit, paper }: DrawingOptions): readonly Mark[] {
  const { length, parts, words } = bars[unit];
  const { x0, y1 } = frameOf(paper);
  const x = x0 - 3.5;
  const tick = (i: number): Mark => {
    const half = i === 0 || i === parts ? END : PART;
    const y = y1 - (length * i) / parts;
    return { kind: 'line', from: [x - half, y], to: [x + half, y], pen: 'symbol', role: 'scale-bar' };
  };
  const [from, to]: readonly [Spot, Spot] = [
    [x, y1],
    [x, y1 - length],
  ];
  return [
    { kind: 'line', from, to, pen: 'symbol', role: 'scale-bar' },
    ...Array.from({ length: parts + 1 }, (_, i) => tick(i)),
    lettering(words, [x - END - 1.2, y1], { role: 'scale-bar', turn: 'right' }),
  ];
}
