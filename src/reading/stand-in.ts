/**
 * Values that stand in for ones that could not be read, only so that the rest can be checked; nothing of them is ever
 * shown. Deep sides and shallow struts fit almost any table.
 */
const BY_NAME: Readonly<Record<string, string>> = {
  length: '2400 mm',
  width: '1200 mm',
  height: '1000 mm',
  side: '200 mm',
  strut: '60 mm',
  clearance: '0.3 mm',
  'lap-relief': '0.4 mm',
  from: 'open',
  ends: 'open',
  id: 'unnamed',
};

const BY_KIND = ['100 mm', '1', '10°', '10 min', '1 %', '1 A', '1 V', '1 EUR', '1 month', '1 g', '2000-01-01'] as const;

/** How many stand-ins there are to try for one value. */
export const STAND_INS = BY_KIND.length + 1;

/** The text to try next for a value of that key; tries count from 0. */
export function standIn(key: string, tried: number): string {
  const named = tried === 0 && Object.hasOwn(BY_NAME, key) ? BY_NAME[key] : undefined;
  return named ?? BY_KIND[Math.max(0, tried - 1) % BY_KIND.length] ?? '1';
}
