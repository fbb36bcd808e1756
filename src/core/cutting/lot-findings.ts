import type { Finding } from '../finding.ts';
import type { Carried } from '../stock/saw.ts';
import { length, say } from '../units/say.ts';
import type { CutLot } from './yard-lot.ts';

/** Sheets that no single cut brings home in the car, and one stock at two thicknesses. */
export function lotFindings(lots: readonly CutLot[], car: Carried | null): readonly Finding[] {
  return [...(car === null ? [] : lots.flatMap((one) => tooLong(one, car))), ...twoThicknesses(lots)];
}

function tooLong({ lot, tooLong: whole }: CutLot, car: Carried): readonly Finding[] {
  if (!whole) return [];
  return [
    {
      ...{ rule: 'car-too-small', level: 'care', where: lot.goods.id, chapter: lot.chapter },
      what: say`no single cut at the yard makes ${lot.goods.id} fit a car of ${length(car.length)} by ${length(car.width)} and still gives every part`,
      ...{ figure: null, limit: null, unit: 'mm' },
      mend: say`have these sheets delivered whole, or give a part that is too long a seam`,
      ...{ source: 'cutting.car in notebook.md', accepted: null },
    },
  ];
}

/** Parts remember their sheet: those reckoned with another thickness never share it. */
function twoThicknesses(lots: readonly CutLot[]): readonly Finding[] {
  return lots.flatMap(({ lot }, i): readonly Finding[] => {
    const other = lots.slice(0, i).find((one) => one.lot.goods.id === lot.goods.id);
    if (other === undefined || Math.abs(other.lot.thickness - lot.thickness) < 1e-3) return [];
    return [
      {
        ...{ rule: 'sheets-of-two-thicknesses', level: 'note', where: lot.goods.id, chapter: lot.chapter },
        what: say`parts of ${lot.goods.id} reckon with ${length(other.lot.thickness)} and with ${length(lot.thickness)}, so they are cut from sheets of their own`,
        ...{ figure: lot.thickness, limit: other.lot.thickness, unit: 'mm' },
        mend: say`if they come from one sheet, give all their roles its reading`,
        ...{ source: 'materials of the chapter', accepted: null },
      },
    ];
  });
}
