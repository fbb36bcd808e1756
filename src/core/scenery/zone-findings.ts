import type { Finding } from '../finding.ts';
import { bounds } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import { type Span, spansWithout } from '../geometry/spans.ts';
import { length, say } from '../units/say.ts';
import { clipped, regionArea } from './clip.ts';
import type { CoveredZone } from './cover.ts';
import { found, PRACTICE } from './found.ts';
import type { Land, Path, Region, Stretch, Water, Zone } from './land.ts';
import { pathStrip } from './tunnel-room.ts';
import { pointsBetween } from './way.ts';

/** Shared ground smaller than this is a line drawn by hand, mm2. */
const LEAST = 100;

/** A line with the ground that it keeps trees off. */
export type Treeless = { readonly path: Path; readonly strips: readonly (readonly Point[])[] };

/** Where trees may not stand: the strips of the lines as wide as their formation, tunnels left out. */
export function treelessLines(paths: readonly Path[], tunnels: readonly Stretch[]): readonly Treeless[] {
  return paths.map((path) => {
    const own = tunnels.filter(({ line }) => line === path.id);
    const strips = openRanges(path, own).flatMap((range) => {
      const points = pointsBetween(path.points, range);
      return points.length < 2 ? [] : [pathStrip(points, path.half)];
    });
    return { path, strips };
  });
}

/** What of a path lies under the sky, from and to along it; mm. */
function openRanges({ points }: Path, tunnels: readonly Stretch[]): readonly Span[] {
  const whole: Span = [points[0]?.at ?? 0, points[points.length - 1]?.at ?? 0];
  const under = tunnels.map(({ from, to }) => [Math.min(from, to), Math.max(from, to)] as const);
  return spansWithout([whole], under);
}

type Asked = { readonly land: Pick<Land, 'zones' | 'water'>; readonly treeless: readonly Treeless[] };

/** Zones that run into water, and trees on ground that a line runs over. */
export function zoneFindings(zones: readonly CoveredZone[], { land, treeless }: Asked): readonly Finding[] {
  return land.zones.flatMap((zone) => [
    ...land.water.flatMap((water) => inWater(zone, water)),
    ...crowded(zone),
    ...treeless.flatMap((line) => onLine(zone, zones.find(({ id }) => id === zone.id)?.region ?? [], line)),
  ]);
}

function inWater({ id, outline }: Zone, water: Water): readonly Finding[] {
  const shared = clipped([{ outline, holes: [] }], water.outline);
  if (regionArea(shared) < LEAST) return [];
  const { low, high } = bounds(shared.flatMap((piece) => piece.outline));
  return [
    found({
      ...{ rule: 'zone-in-water', level: 'note', where: id, figure: narrow(low, high), limit: 0 },
      what: say`${id} runs into ${water.id} between ${length(low[0])}, ${length(low[1])} and ${length(high[0])}, ${length(high[1])}; what lies in the water is not counted.`,
      mend: say`Draw ${id} to the water's edge, or leave it: only dry ground is covered.`,
      source: 'geometry',
    }),
  ];
}

/** Trees nearer than this to each other are a hedge; common practice, no source. mm. */
const HEDGE = 20;

function crowded({ id, trees }: Zone): readonly Finding[] {
  const apart = trees > 0 ? 1000 / Math.sqrt(trees) : Number.POSITIVE_INFINITY;
  if (apart >= HEDGE) return [];
  return [
    found({
      ...{ rule: 'trees-crowded', level: 'care', where: id, figure: apart, limit: HEDGE },
      what: say`${id} has ${String(trees)} trees for each square metre, which stand ${length(apart)} apart.`,
      mend: say`Write ${String((1000 / HEDGE) ** 2)} or fewer: 'trees' counts those on each square metre of plan, 10.8 sq ft.`,
      source: PRACTICE,
    }),
  ];
}

/** The narrower side of a box, mm. */
function narrow(low: Point, high: Point): number {
  return Math.min(high[0] - low[0], high[1] - low[1]);
}

function onLine({ id, trees }: Zone, region: Region, { path, strips }: Treeless): readonly Finding[] {
  if (trees <= 0) return [];
  const shared = strips.flatMap((strip) => clipped(region, strip));
  if (regionArea(shared) < LEAST) return [];
  const { low, high } = bounds(shared.flatMap(({ outline }) => outline));
  return [
    found({
      ...{ rule: 'trees-on-line', level: 'note', where: id, figure: narrow(low, high), limit: 0 },
      what: say`${path.id} runs through the trees of ${id} between ${length(low[0])}, ${length(low[1])} and ${length(high[0])}, ${length(high[1])}; none is counted within ${length(path.half)} of its middle.`,
      mend: say`Plant none within ${length(path.half)} of the line's middle, and farther on curves where long coaches swing out, or draw ${id} clear of it.`,
      source: 'geometry',
    }),
  ];
}
