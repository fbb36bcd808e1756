import { costOfSheets } from './cost.ts';
import type { Area, CutAnswer, CutJob, CutStock } from './job.ts';
import { layOut } from './layout.ts';
import { exact, isSize } from './tick.ts';

/** What fits the car, lying flat, and how far off a cut at the yard may be to either side; mm. */
export type Car = { readonly length: number; readonly width: number; readonly tolerance: number };

/** The cut asked of the yard, its place measured from the sheet's left or lower edge, and the two pieces to carry. */
export type YardCut = {
  readonly kind: 'rip' | 'crosscut';
  readonly at: number;
  readonly pieces: readonly [Area, Area];
};

/** A layout that spares a strip for the yard's cut; null cuts: the whole sheet fits the car. */
export type YardPlan = { readonly cut: YardCut | null; readonly answer: CutAnswer };

/** Places tried on either side of the middle. */
const PLACES = 6;

/**
 * Where one coarse cut at the yard parts every new sheet so that it fits the car, and the layout round it: a strip of
 * the kerf and twice the tolerance is spared, both its edges are cut again at home, and every measure is taken from the
 * factory edges. The cheapest of the places tried; null when no single cut makes the sheet fit. mm.
 */
export function yardPlan(job: CutJob, car: Car): YardPlan | null {
  const sheet = job.stock.find((stock) => !stock.offcut);
  if (sheet === undefined || !isSize(car.length) || !isSize(car.width)) return null;
  if (fitsCar(sheet, car)) return { cut: null, answer: layOut(job) };
  const plans = cutsOf(job, { sheet, car }).map((cut) => ({ cut, answer: layOut(sparing(job, { cut, car })) }));
  return plans.reduce<YardPlan | null>((best, plan) => (best === null || better(job, plan, best) ? plan : best), null);
}

/** Whether a piece fits the car, lying flat either way. */
export function fitsCar(piece: { readonly length: number; readonly width: number }, car: Car): boolean {
  const [long, short] = [Math.max(piece.length, piece.width), Math.min(piece.length, piece.width)];
  return long <= Math.max(car.length, car.width) && short <= Math.min(car.length, car.width);
}

/** Cuts whose two pieces fit the car even when the cut is off by its tolerance: near the middle, and beside parts. */
function cutsOf(job: CutJob, { sheet, car }: { readonly sheet: CutStock; readonly car: Car }): readonly YardCut[] {
  return (['crosscut', 'rip'] as const).flatMap((kind) => {
    const size = kind === 'crosscut' ? sheet.length : sheet.width;
    const strip = job.kerf + 2 * car.tolerance;
    const beside = job.parts.flatMap((part) => [1, 2].map((n) => job.trim + n * (part.length + job.kerf)));
    const spread = Array.from({ length: 2 * PLACES + 1 }, (_, i) => size / 2 + ((i - PLACES) * size) / (4 * PLACES));
    const places = [...new Set([...spread, ...beside].map((place) => exact(place + strip / 2)))];
    return places
      .filter((at) => at > strip && at < size - strip)
      .map((at): YardCut => ({ kind, at, pieces: piecesOf(sheet, { kind, at, kerf: job.kerf }) }))
      .filter((cut) => cut.pieces.every((piece) => fitsCar(grown(piece, { kind, by: car.tolerance }), car)))
      .sort((a, b) => Math.abs(a.at - size / 2) - Math.abs(b.at - size / 2))
      .slice(0, 2 * PLACES);
  });
}

type Where = { readonly kind: 'rip' | 'crosscut'; readonly at: number; readonly kerf: number };

function piecesOf(sheet: CutStock, { kind, at, kerf }: Where): readonly [Area, Area] {
  const { length, width } = sheet;
  const far = exact(at + kerf);
  return kind === 'crosscut'
    ? [
        { x: 0, y: 0, length: at, width },
        { x: far, y: 0, length: exact(length - far), width },
      ]
    : [
        { x: 0, y: 0, length, width: at },
        { x: 0, y: far, length, width: exact(width - far) },
      ];
}

function grown(piece: Area, { kind, by }: { readonly kind: 'rip' | 'crosscut'; readonly by: number }): Area {
  return kind === 'crosscut' ? { ...piece, length: piece.length + by } : { ...piece, width: piece.width + by };
}

/** The job with the strip of the yard's cut taken out of every new sheet. */
function sparing(job: CutJob, { cut, car }: { readonly cut: YardCut; readonly car: Car }): CutJob {
  const size = job.kerf + 2 * car.tolerance;
  const from = exact(cut.at - car.tolerance);
  const strip = (stock: CutStock) =>
    cut.kind === 'crosscut'
      ? { x: from, y: 0, length: size, width: stock.width }
      : { x: 0, y: from, length: stock.length, width: size };
  return { ...job, stock: job.stock.map((one) => (one.offcut ? one : { ...one, noGo: [...one.noGo, strip(one)] })) };
}

function better(job: CutJob, a: YardPlan, b: YardPlan): boolean {
  const missing = (plan: YardPlan) => plan.answer.unplaced.reduce((sum, one) => sum + one.quantity, 0);
  const gain = missing(b) - missing(a) || costOfSheets(job, b.answer.sheets) - costOfSheets(job, a.answer.sheets);
  return gain > 1e-9;
}
