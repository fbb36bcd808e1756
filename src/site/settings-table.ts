import { cutListBySetting } from '../core/cutting/settings.ts';
import { stripsIn } from '../core/cutting/strips.ts';
import type { Book } from './notebooks.ts';

/** One setting of the fence or stop for all sheets of a stock. */
export type SettingRow = {
  readonly kind: 'rip' | 'crosscut';
  /** mm */
  readonly setting: number;
  readonly count: number;
  /** `3: 5, 6` reads sheet 3, cuts 5 and 6 */
  readonly cuts: readonly { readonly sheet: number; readonly numbers: readonly number[] }[];
  /** strips of this width that a whole new sheet gives, for rips that repeat */
  readonly whole: number | null;
};

/** The cuts of a stock's sheets by setting, rips first, the larger setting first; trims stand with their sheets. */
export function settingRows(book: Book, stock: string): readonly SettingRow[] {
  const { sheets } = book.notebook;
  const own = sheets.flatMap((sheet, index) => (sheet.stock === stock ? [{ sheet, number: index + 1 }] : []));
  const fresh = own.find(({ sheet }) => sheet.piece === undefined)?.sheet;
  return cutListBySetting(own.map(({ sheet }) => sheet)).flatMap(({ cuts, kind, setting }): readonly SettingRow[] => {
    if (kind === 'trim') return [];
    const numbers = [...new Set(cuts.map(({ sheet }) => sheet))].map((index) => ({
      sheet: own[index]?.number ?? 0,
      numbers: cuts.filter((cut) => cut.sheet === index).map(({ number }) => number),
    }));
    const strips = kind === 'rip' && cuts.length > 1 && fresh !== undefined;
    const whole = strips ? stripsIn(trimmedWidth(fresh), setting, fresh.kerf).count : null;
    return [{ kind, setting, count: cuts.length, cuts: numbers, whole }];
  });
}

/** The width that is left to rip once the edges are trimmed, mm. */
function trimmedWidth({ cuts, width }: Book['notebook']['sheets'][number]): number {
  const trims = cuts.filter(({ kind }) => kind === 'trim');
  const last = trims.at(-1)?.yields;
  return last === undefined ? width : Math.max(...last.map((area) => area.width));
}
