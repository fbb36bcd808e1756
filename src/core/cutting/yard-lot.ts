import type { Carried } from '../stock/saw.ts';
import type { CutAnswer, CutJob } from './job.ts';
import { layOut } from './layout.ts';
import type { Lot } from './lot.ts';
import { isBought } from './parts-job.ts';
import { fitsCar, type YardCut, yardPlan } from './yard.ts';

/** A lot laid out: with a cut at the yard where new sheets need one to fit the car; `tooLong` when no single cut does. */
export type LaidLot = { readonly answer: CutAnswer; readonly yard: YardCut | null; readonly tooLong: boolean };

/** One lot with the job made of it and its layout; its sheets are numbered from `first`, 0-based. */
export type CutLot = LaidLot & { readonly lot: Lot; readonly job: CutJob; readonly first: number };

/** What the search for the yard's cut may do a place tried. */
const PLACE_BUDGET = 40;

/** Lays a job out so that its new sheets fit the car, lying flat: sizes that fit come first, else one cut at the yard. */
export function layOutCarried(job: CutJob, car: Carried | null): LaidLot {
  const whole = () => ({ answer: layOut(job), yard: null, tooLong: false });
  if (car === null) return whole();
  const carried = { length: car.length, width: car.width, tolerance: car.within };
  const fitting = job.stock.filter((stock) => !isBought(stock.id) || fitsCar(stock, carried));
  if (fitting.some(({ id }) => isBought(id))) {
    const answer = layOut({ ...job, stock: fitting });
    if (answer.unplaced.length === 0) return { answer, yard: null, tooLong: false };
  }
  const first = job.stock.find(({ id }) => isBought(id));
  const stock = job.stock.filter((one) => one === first || one.offcut);
  const plan = yardPlan({ ...job, stock, budget: Math.min(job.budget, PLACE_BUDGET) }, carried);
  if (plan === null || plan.answer.unplaced.length > 0) return { ...whole(), tooLong: true };
  const cutNew = plan.answer.sheets.some((sheet) => isBought(sheet.stock));
  return { answer: plan.answer, yard: cutNew ? plan.cut : null, tooLong: false };
}
