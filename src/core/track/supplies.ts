import type { TrackInput } from './input.ts';
import type { Layout } from './laid.ts';
import type { LineWay } from './line.ts';

/** A stretch of line laid in flexible track, between turnouts, ready-made pieces and ends; mm. */
export type FlexStretch = {
  readonly line: string;
  readonly from: number;
  readonly length: number;
  /** how much further one rail runs than the other, gauge times the turn; turns to both hands cancel */
  readonly slip: number;
};

/** One length of flexible track as sold, and what is cut from it. */
export type FlexLength = {
  readonly cuts: readonly { readonly line: string; readonly from: number; readonly length: number }[];
  readonly left: number;
};

/** Ready-made pieces of one kind. */
export type Section = {
  readonly kind: 'straight' | 'curve';
  readonly length: number | null;
  readonly radius: number | null;
  readonly through: number | null;
  readonly count: number;
};

export type TrackSupplies = {
  readonly stretches: readonly FlexStretch[];
  readonly yard: number;
  readonly yards: readonly FlexLength[];
  /** true when no fewer lengths can do: the sum of the stretches needs as many */
  readonly proved: boolean;
  readonly sections: readonly Section[];
  readonly turnouts: number;
  readonly roadbed: {
    readonly stock: string;
    readonly width: number;
    readonly length: number;
    readonly strips: number;
    readonly sheets: number;
  } | null;
  /** cm3 of loose ballast */
  readonly ballast: number;
  readonly pins: number;
};

/** A yard, the length flexible track is commonly sold in; mm. */
export const YARD = 914.4;

/** Loose ballast along single track, cm3 a metre by gauge: N 40, HO 90, O 270; from an assumed profile, no source. */
const BALLAST = [
  [0, 0],
  [9, 40],
  [16.5, 90],
  [32, 270],
  [45, 480],
] as const;

/** A pin so often along the track, mm; common practice, no source. */
export const PIN_EVERY = 150;

export function ballastPerMetre(gauge: number): number {
  const i = Math.max(
    1,
    BALLAST.findIndex(([g]) => g >= gauge),
  );
  const [[g0, v0], [g1, v1]] = [BALLAST[i - 1] ?? BALLAST[0], BALLAST[i] ?? BALLAST[4]];
  return v0 + ((gauge - g0) * (v1 - v0)) / (g1 - g0);
}

/** What to buy for the lines that are built now. */
export function trackSupplies(input: TrackInput, layout: Layout, gauge: number): TrackSupplies {
  const now = layout.lines.filter(({ phase }) => phase === 'now');
  const yard = input.flex.yard ?? YARD;
  const stretches = now.flatMap((line) => flexStretches(line, input, gauge));
  const length = now.reduce((sum, line) => sum + line.length, 0);
  const yards = cutFlex(stretches, yard);
  const needed = Math.ceil(stretches.reduce((sum, one) => sum + one.length, 0) / yard - 1e-9);
  return {
    stretches,
    yard,
    yards,
    proved: yards.length === needed,
    sections: sectionsOf(input),
    turnouts: layout.turnouts.filter(({ line }) => now.some(({ id }) => id === line)).length,
    roadbed: roadbedOf(input, length),
    ballast: (ballastPerMetre(gauge) * length) / 1000,
    pins: Math.ceil(length / PIN_EVERY),
  };
}

/** Runs of a line that are neither turnout nor ready-made. */
export function flexStretches(line: LineWay, input: Pick<TrackInput, 'lines'>, gauge: number): readonly FlexStretch[] {
  const pieces = input.lines.find(({ id }) => id === line.id)?.pieces ?? [];
  const isFlex = ({ turnout, piece }: LineWay['elements'][number]) => {
    const own = pieces[piece];
    return turnout === null && !(own !== undefined && own.kind !== 'turnout' && own.times !== null);
  };
  const runs: FlexStretch[] = [];
  line.elements.forEach((element, i) => {
    if (!isFlex(element)) return;
    const { from, length, stretch } = element;
    const slip = gauge * ((stretch.k0 + stretch.k1) / 2) * stretch.length;
    const before = line.elements[i - 1];
    const open = before !== undefined && isFlex(before) ? runs.pop() : undefined;
    runs.push({
      line: line.id,
      from: open?.from ?? from,
      length: (open?.length ?? 0) + length,
      slip: (open?.slip ?? 0) + slip,
    });
  });
  return runs.filter(({ length }) => length > 1e-6).map((run) => ({ ...run, slip: Math.abs(run.slip) }));
}

/** Whole lengths first, then the rests, longest first, each in the fullest length that holds it. */
export function cutFlex(stretches: readonly FlexStretch[], yard: number): readonly FlexLength[] {
  const cuts = stretches.flatMap(({ line, from, length }) => {
    const whole = Math.floor(length / yard + 1e-9);
    const rest = length - whole * yard;
    const full = Array.from({ length: whole }, (_, i) => ({ line, from: from + i * yard, length: yard }));
    return rest > 1e-6 ? [...full, { line, from: from + whole * yard, length: rest }] : full;
  });
  const lengths: { cuts: (typeof cuts)[number][]; left: number }[] = [];
  for (const cut of cuts.toSorted((a, b) => b.length - a.length)) {
    const fits = lengths.filter(({ left }) => left >= cut.length - 1e-6).toSorted((a, b) => a.left - b.left)[0];
    if (fits === undefined) lengths.push({ cuts: [cut], left: yard - cut.length });
    else {
      fits.cuts.push(cut);
      fits.left -= cut.length;
    }
  }
  return lengths.map(({ cuts: own, left }) => ({ cuts: own, left: Math.max(0, left) }));
}

/** Ready-made pieces by kind, counted. */
function sectionsOf({ lines }: TrackInput): readonly Section[] {
  const counts = new Map<string, Section>();
  for (const piece of lines.filter(({ phase }) => phase === 'now').flatMap(({ pieces }) => pieces)) {
    if (piece.kind === 'turnout' || piece.times === null) continue;
    const number = (value: number | 'to close') => (value === 'to close' ? null : value);
    const shape =
      piece.kind === 'straight'
        ? { kind: 'straight' as const, length: number(piece.length), radius: null, through: null }
        : { kind: 'curve' as const, length: null, radius: number(piece.radius), through: number(piece.through) };
    const key = JSON.stringify(shape);
    counts.set(key, { ...shape, count: (counts.get(key)?.count ?? 0) + piece.times });
  }
  return [...counts.values()];
}

/** Strips of roadbed as long as its sheet, and the sheets they are cut from: whole strips across the sheet's width. */
function roadbedOf({ roadbed }: TrackInput, length: number): TrackSupplies['roadbed'] {
  if (roadbed === null) return null;
  const { stock, width, sheet } = roadbed;
  const strips = sheet === null ? 0 : Math.ceil(length / sheet.length - 1e-9);
  const across = sheet === null ? 0 : Math.floor(sheet.width / width + 1e-9);
  return { stock, width, length, strips, sheets: across === 0 ? 0 : Math.ceil(strips / across) };
}
