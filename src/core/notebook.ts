import type { Bench, Seam } from './benchwork/bench.ts';
import type { CutBound, CutSheet } from './cutting/job.ts';
import type { Finding } from './finding.ts';
import type { LogRecord } from './log/record.ts';
import type { Step } from './steps/step.ts';
import type { Stock } from './stock/goods.ts';
import type { Envelope, Joint, Part } from './stock/part.ts';
import type { KnownThickness } from './stock/thickness.ts';
import type { Amount } from './units/quantity.ts';

/** A named dimension with the text its author typed. */
export type NamedDimension = { readonly name: string; readonly amount: Amount; readonly text: string };

/** Everything computed from one plan: plain JSON, mm, kg, N, radians; the same input gives the same bytes. */
export type Notebook = {
  readonly slug: string;
  readonly title: string;
  readonly scale: string;
  readonly show: 'mm' | 'in';
  readonly makers: readonly string[];
  readonly licence: string;
  readonly dimensions: readonly NamedDimension[];
  readonly thicknesses: readonly KnownThickness[];
  readonly stock: readonly Stock[];
  readonly benches: readonly Bench[];
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly seams: readonly Seam[];
  readonly envelopes: readonly Envelope[];
  /** kg of each part (one instance), by part id */
  readonly masses: Readonly<Record<string, number>>;
  readonly sheets: readonly CutSheet[];
  readonly bounds: readonly CutBound[];
  readonly steps: readonly Step[];
  readonly log: readonly LogRecord[];
  readonly findings: readonly Finding[];
};
