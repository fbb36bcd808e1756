import type { SheetStock } from '../stock/goods.ts';
import { bothUnits } from '../units/reading.ts';
import type { Reader } from './reader.ts';
import type { Scenery } from './schema.ts';

type Asked = NonNullable<Scenery['ground']>['water'][number];

type Reading = { readonly at: string; readonly reader: Reader };

/** Sheets are as thick as their range says, and a floor may be written that much off, mm. */
const CLOSE = 1e-6;

/** The sheet a tray is cut from; one that is not as thick as the floor is a fault. */
export function traySheet({ tray, floor }: Asked, thick: number, { at, reader }: Reading): SheetStock | null {
  if (tray === undefined) return null;
  const sheet = reader.sheet(tray, `${at}.tray`);
  // a floor that is no thickness at all was told already
  if (sheet === null || thick <= 0) return sheet;
  const { low, high, listed } = sheet.thickness;
  if (thick < low - CLOSE || thick > high + CLOSE) {
    reader.faults.push({
      ...{ rule: 'tray-thickness', at: floor.at },
      what: `the floor is ${floor.text} thick, and ${sheet.id} is ${bothUnits(listed)}, from ${bothUnits(low)} to ${bothUnits(high)}`,
      mend: `write ${bothUnits(listed)} for the floor, or name a sheet as thick as it`,
    });
  }
  return sheet;
}
