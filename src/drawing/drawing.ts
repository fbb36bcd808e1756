import type { Dimension } from './dimension.ts';
import type { Mark } from './mark.ts';
import type { PaperName } from './paper.ts';
import type { View } from './view.ts';

/** Which unit a drawing's figures are in; the sheet says it. */
export type DrawingUnit = 'mm' | 'in';

export type DrawingOptions = {
  readonly unit: DrawingUnit;
  readonly paper: PaperName;
  /** the most a picture of the assembly may take, mm; what the paper has when absent */
  readonly room?: { readonly width: number; readonly height: number };
};

/** One sheet of paper with everything on it; sizes in mm, `scale` 10 for 1:10, null for a diagram drawn to none. */
export type DrawingSheet = {
  readonly id: string;
  readonly unit: DrawingUnit;
  readonly title: string;
  readonly desc: string;
  readonly width: number;
  readonly height: number;
  readonly scale: number | null;
  readonly sheet: number;
  readonly of: number;
  readonly marks: readonly Mark[];
  /** those of the marks that are the drawing itself: without the frame, the scale bar and the title block */
  readonly own: readonly Mark[];
  /** how model coordinates lie on this sheet, and every printed figure with what it fixes */
  readonly views: readonly View[];
  readonly dimensions: readonly Dimension[];
};

/** A drawing: its first sheet, and all its sheets when one doesn't hold it. */
export type Drawing = DrawingSheet & { readonly sheets: readonly DrawingSheet[] };
