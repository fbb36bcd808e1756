import type { Finding } from '../../finding.ts';
import { type Fastener, joinsPieces } from '../../stock/fastener.ts';
import type { Part } from '../../stock/part.ts';
import { screwHoles } from '../../stock/screw-holes.ts';
import { length, say } from '../../units/say.ts';
import { tidy } from '../machining.ts';
import { told } from '../told.ts';

/** What a hole is for: how far off another drill may be hangs on it. */
type Purpose = 'pilot' | 'clearance' | 'insert' | 'hole';

/** A hole that is wanted. */
type Bore = { readonly diameter: number; readonly purpose: Purpose };

/** How much smaller and larger another drill may be, mm; common practice, no source. */
const SERVES: Readonly<Record<Purpose, { readonly under: number; readonly over: number }>> = {
  pilot: { under: 0.4, over: 0.2 },
  clearance: { under: 0.1, over: 0.6 },
  insert: { under: 0.2, over: 0.2 },
  hole: { under: 0.1, over: 1 },
};
/** A drill no further off than this is the one, mm. */
const SAME = 0.05;

const WORDS: Readonly<Record<Purpose, string>> = {
  pilot: 'pilots of screws',
  clearance: 'clearance holes of screws',
  insert: 'inserts',
  hole: 'holes for bolts and wires',
};

type Drilled = { readonly parts: readonly Part[]; readonly fasteners: readonly Fastener[] };

/** Every hole of the parts, and of the screws those that no part has: clearance in the first piece, pilot in the last. */
function boresOf({ parts, fasteners }: Drilled): readonly Bore[] {
  const screws = fasteners.filter(({ form }) => form === 'screw');
  const clearances = new Set(screws.map(({ diameter }) => screwHoles(diameter)?.clearance ?? 0));
  const bored = parts.flatMap(({ role, features }) =>
    features.flatMap((feature): readonly Bore[] => {
      if (feature.kind !== 'hole') return [];
      const { diameter } = feature;
      const purpose = role === 'leg-pad' ? 'insert' : clearances.has(diameter) ? 'clearance' : 'hole';
      return [{ diameter, purpose }];
    }),
  );
  const driven = screws.flatMap((screw): readonly Bore[] => {
    const holes = screwHoles(screw.diameter);
    if (holes === null) return [];
    const pilot: Bore = { diameter: holes.hardwood, purpose: 'pilot' };
    return joinsPieces(screw) ? [pilot, { diameter: holes.clearance, purpose: 'clearance' }] : [pilot];
  });
  return [...bored, ...driven];
}

/** Drills that holes ask for and that are not among those in hand, with the nearest that serves; nothing where none are named. */
export function drillFindings(drilled: Drilled, drills: readonly number[]): readonly Finding[] {
  if (drills.length === 0) return [];
  const wanted = new Map<string, Bore>();
  for (const bore of boresOf(drilled)) {
    const key = `${tidy(bore.diameter)} ${bore.purpose}`;
    if (!wanted.has(key)) wanted.set(key, bore);
  }
  return [...wanted.values()]
    .toSorted((a, b) => a.diameter - b.diameter)
    .flatMap((bore) => {
      const nearest = drills.reduce((best, one) => (off(one, bore) < off(best, bore) ? one : best));
      return off(nearest, bore) <= SAME ? [] : [missing(bore, drills)];
    });
}

function off(drill: number, { diameter }: Bore): number {
  return Math.abs(drill - diameter);
}

function missing(bore: Bore, drills: readonly number[]): Finding {
  const { diameter, purpose } = bore;
  const { under, over } = SERVES[purpose];
  const fit = drills.filter((one) => one >= diameter - under - 1e-9 && one <= diameter + over + 1e-9);
  const what = say`${WORDS[purpose]} want a drill of ${length(diameter)}, which is not among yours`;
  const about = { rule: 'drill-not-in-hand', where: 'tools', what, figure: diameter } as const;
  const best = fit.toSorted((a, b) => off(a, bore) - off(b, bore))[0];
  if (best === undefined) {
    const mend = say`get one of ${length(tidy(diameter - under))} to ${length(tidy(diameter + over))}, and write it under tools: drills`;
    return told('care', { ...about, limit: null, mend });
  }
  return told('note', { ...about, limit: best, mend: say`yours of ${length(best)} serves` });
}
