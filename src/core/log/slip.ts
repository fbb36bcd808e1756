/** A usual mistake at the tape or the pencil that explains a result, with what it mistook. */
export type Slip = { readonly kind: 'inch' | 'start' | 'six-nine' | 'swapped' | 'nominal'; readonly says: string };

const INCH = 25.4;

/** Nominal and dressed widths of softwood lumber, in; American Softwood Lumber Standard PS 20, dry sizes. */
const DRESSED: readonly (readonly [nominal: number, actual: number])[] = [
  [1, 0.75],
  [2, 1.5],
  [3, 2.5],
  [4, 3.5],
  [6, 5.5],
  [8, 7.25],
  [10, 9.25],
  [12, 11.25],
];

/** Closer than this a guess at the mistake counts as met; mm. */
const MET = 0.5;

type Pair = { readonly measured: number; readonly expected: number; readonly met: number };

/** The usual slip that would turn `expected` into `measured` (mm), or null; `within` is how far a reading may be out. */
export function likelySlip(measured: number, expected: number, within: number): Slip | null {
  const met = Math.max(MET, within);
  const pair = { measured, expected, met };
  if (Math.abs(measured - expected) <= met) return null;
  return nominalSlip(pair) ?? startSlip(pair) ?? digitSlip(pair, numeralsOf(expected));
}

function nominalSlip({ measured, expected, met }: Pair): Slip | null {
  const found = DRESSED.find(
    ([nominal, actual]) => Math.abs(expected - actual * INCH) <= met && Math.abs(measured - nominal * INCH) <= met,
  );
  if (found === undefined) return null;
  return { kind: 'nominal', says: `cut to its name, ${found[0]} in, and not to its size, ${found[1]} in` };
}

function startSlip({ measured, expected, met }: Pair): Slip | null {
  const off = Math.abs(measured - expected);
  if (Math.abs(off - INCH) <= met)
    return {
      kind: 'inch',
      says: 'out by exactly 1 in: the tape was read from its 1 in mark, or one inch too few was counted',
    };
  const start = [10, 100].find((mark) => Math.abs(off - mark) <= met);
  if (start === undefined) return null;
  return { kind: 'start', says: `out by exactly ${start} mm: the tape was read from its ${start} mm mark` };
}

/** How a builder may have written the figure: mm to 0.1, whole mm, inches to 0.01, whole inches with a fraction. */
type Numeral = { readonly digits: string; readonly unit: number; readonly rest: number };

function numeralsOf(mm: number): Numeral[] {
  const inches = mm / INCH;
  const whole = Math.floor(inches);
  return [
    { digits: mm.toFixed(1), unit: 1, rest: 0 },
    { digits: mm.toFixed(0), unit: 1, rest: 0 },
    { digits: inches.toFixed(2), unit: INCH, rest: 0 },
    { digits: String(whole), unit: INCH, rest: (inches - whole) * INCH },
  ];
}

function digitSlip({ measured, met }: Pair, numerals: readonly Numeral[]): Slip | null {
  for (const [kind, variants] of [
    ['six-nine', turned],
    ['swapped', swapped],
  ] as const) {
    for (const { digits, unit, rest } of numerals) {
      const found = variants(digits).find((text) => Math.abs(Number(text) * unit + rest - measured) <= met);
      if (found === undefined) continue;
      const name = unit === 1 ? 'mm' : 'in';
      const what = kind === 'swapped' ? 'two digits swapped' : 'a 6 read as a 9';
      return { kind, says: `${what}: ${found} for ${digits} ${name}` };
    }
  }
  return null;
}

function turned(digits: string): string[] {
  return [...digits].flatMap((digit, i) => {
    if (digit !== '6' && digit !== '9') return [];
    return [`${digits.slice(0, i)}${digit === '6' ? '9' : '6'}${digits.slice(i + 1)}`];
  });
}

/** Two digits side by side the other way round; across the point as well. */
function swapped(digits: string): string[] {
  const at = [...digits].flatMap((digit, i) => (digit === '.' ? [] : [i]));
  return at.slice(1).flatMap((second, n) => {
    const first = at[n] ?? 0;
    if (digits[first] === digits[second]) return [];
    const list = [...digits];
    [list[first], list[second]] = [digits[second] ?? '', digits[first] ?? ''];
    return [list.join('')];
  });
}
