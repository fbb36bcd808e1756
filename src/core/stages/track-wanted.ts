import type { GoodsWanted, SheetWanted } from '../shopping/line.ts';
import type { Stock } from '../stock/goods.ts';
import type { Section, TrackSupplies } from '../track/supplies.ts';
import { showLength } from '../units/show.ts';
import { showAngle } from '../units/show-amount.ts';

type Show = 'mm' | 'in';

/** Track by the piece: flexible lengths, ready-made pieces, turnouts and pins. Loose ballast is the land's. */
export function trackWanted(supplies: TrackSupplies | null, show: Show): readonly GoodsWanted[] {
  if (supplies === null) return [];
  const piece = (name: string, quantity: number): GoodsWanted => ({
    ...{ stock: null, name, unit: 'piece', quantity, for: 'track' },
  });
  return [
    piece(`Flexible track in lengths of ${showLength(supplies.yard, show)}`, supplies.yards.length),
    ...supplies.sections.map((section) => piece(sectionName(section, show), section.count)),
    piece('Turnout', supplies.turnouts),
    piece('Track pin', supplies.pins),
  ].filter(({ quantity }) => quantity !== 0);
}

/** A ready-made piece by its own figures; the turn of a curve in degrees. */
function sectionName({ kind, length, radius, through }: Section, show: Show): string {
  if (kind === 'straight') return length === null ? 'Straight' : `Straight, ${showLength(length, show)}`;
  const turn = through === null ? [] : [showAngle(through)];
  return ['Curve', ...(radius === null ? [] : [`radius ${showLength(radius, show)}`]), ...turn].join(', ');
}

/** Whole sheets that the strips of roadbed are cut from. */
export function roadbedWanted(supplies: TrackSupplies | null, stock: readonly Stock[]): readonly SheetWanted[] {
  const roadbed = supplies?.roadbed ?? null;
  const goods = stock.find(({ id }) => id === roadbed?.stock);
  const size = goods?.kind === 'sheet' ? goods.sizes[0] : undefined;
  if (roadbed === null || size === undefined || roadbed.sheets === 0) return [];
  const { length, width } = size;
  const parts = (roadbed.length * roadbed.width) / roadbed.sheets;
  return Array.from({ length: roadbed.sheets }, () => ({
    ...{ stock: roadbed.stock, length, width, parts, kept: 0, for: 'track' },
  }));
}
