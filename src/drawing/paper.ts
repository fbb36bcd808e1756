import type { Extent } from './mark.ts';

export type PaperName = 'A4' | 'A3' | 'Letter' | 'Tabloid';

/** Sheets lie along their long side; mm. ISO 216 A4 and A3; ANSI/ASME Y14.1 A and B (8.5 x 11 in, 11 x 17 in). */
export const papers: Readonly<Record<PaperName, { readonly width: number; readonly height: number }>> = {
  A4: { width: 297, height: 210 },
  A3: { width: 420, height: 297 },
  Letter: { width: 279.4, height: 215.9 },
  Tabloid: { width: 431.8, height: 279.4 },
};

/** Borders of ISO 5457: 20 mm at the filing edge, 10 mm elsewhere. */
export function frameOf(paper: PaperName): Extent {
  const { width, height } = papers[paper];
  return { x0: 20, y0: 10, x1: width - 10, y1: height - 10 };
}

/** Scales of ISO 5455, largest drawing first: 10:1 to 1:100, as the number a length is divided by. */
export const scales: readonly number[] = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];

/** 1:10, or 2:1 for an enlargement. */
export function scaleText(scale: number): string {
  return scale < 1 ? `${Math.round(1 / scale)}:1` : `1:${scale}`;
}
