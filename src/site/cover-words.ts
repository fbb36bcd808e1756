import { loopArea } from '../core/geometry/polygon.ts';
import type { CoveredZone } from '../core/scenery/cover.ts';
import type { LandQuantity } from '../core/scenery/quantity.ts';
import { both, type Html, line, text } from './html.ts';
import { lengthPair } from './lengths.ts';
import { areaPair, kilograms, significant, volumePair } from './measures.ts';
import type { Book } from './notebooks.ts';
import { stockName } from './sheet-words.ts';
import { quantityWords } from './shopping-words.ts';
import type { Told } from './table.ts';
import { counted } from './words.ts';

function needWords({ need, unit }: LandQuantity): Html {
  switch (unit) {
    case 'm2':
      return both(areaPair(need * 1e6));
    case 'litre':
      return both(volumePair(need * 1e6));
    case 'm':
      return both(lengthPair(need * 1000));
    case 'count':
      return text(significant(need));
    case 'sheet':
      return text(counted(need, 'sheet'));
  }
}

function buyWords({ buy, buyUnit }: LandQuantity): string {
  return buy === null || buyUnit === null ? 'to be judged' : quantityWords({ quantity: buy, unit: buyUnit });
}

/** Ground to be covered: as drawn, and as its slope makes it. */
export function zoneTable(zones: readonly CoveredZone[]): Told {
  return {
    label: 'Ground to be covered',
    caption: text(
      'Ground to be covered: as it lies on the plan, and along its slopes. Trees: what the chapter asks for each m² (10.8 sq ft) of plan, the strips beside the track left out',
    ),
    columns: [['Ground'], ['On the plan', 'right'], ['Along its slopes', 'right'], ['Trees', 'right']],
    rows: zones.map(({ id, plan, surface, trees }) => [
      text(id),
      both(areaPair(plan)),
      both(areaPair(surface)),
      text(String(trees)),
    ]),
  };
}

/** What the land takes, and what is bought for it. */
export function quantityTable(quantities: readonly LandQuantity[]): Told {
  return {
    label: 'What the land takes',
    caption: text('What the land takes, layers, overlaps and waste counted'),
    columns: [['What'], ['For'], ['Needed', 'right'], ['To buy']],
    rows: quantities.map((quantity) => [
      text(quantity.name),
      text(quantity.for),
      needWords(quantity),
      text(buyWords(quantity)),
    ]),
  };
}

type Mass = { readonly of: string; readonly area: number; readonly mass: number };

/** Masses of one thing added up; area in mm2, mass in kg. */
export function massSums({ notebook }: Book): readonly Mass[] {
  const sums = new Map<string, Mass>();
  for (const { of, outline, perSquareMetre } of notebook.scenery?.masses ?? []) {
    const area = Math.abs(loopArea(outline));
    const before = sums.get(of) ?? { of, area: 0, mass: 0 };
    sums.set(of, { of, area: before.area + area, mass: before.mass + area * 1e-6 * perSquareMetre });
  }
  return [...sums.values()];
}

/** What the land adds to the bench. */
export function massTable(book: Book): Told {
  return {
    label: 'What the land weighs',
    caption: text('What the land weighs, over the outline it lies on'),
    columns: [['What'], ['Lies on', 'right'], ['Mass', 'right']],
    rows: massSums(book).map(({ area, mass, of }) => [
      text(nameOf(book, of)),
      both(areaPair(area)),
      text(kilograms(mass)),
    ]),
  };
}

function nameOf(book: Book, of: string): string {
  return book.notebook.stock.some(({ id }) => id === of) ? stockName(book, of) : of.replaceAll('.', ' ');
}

/** All of it together. */
export function massWords(book: Book): Html {
  const mass = massSums(book).reduce((sum, one) => sum + one.mass, 0);
  return line(text(`In all ${kilograms(mass)}. What has no mass in its stock file, such as trees, is not counted.`));
}
