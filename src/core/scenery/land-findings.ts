import type { Finding } from '../finding.ts';
import { atLeast, length, say } from '../units/say.ts';
import type { CoveredZone } from './cover.ts';
import type { Field } from './field.ts';
import { found, PRACTICE } from './found.ts';
import type { Form, Land } from './land.ts';
import type { BuiltLayer } from './model.ts';
import type { Site } from './site.ts';
import { toBench } from './site.ts';

/** Heights nearer than this to what was asked are it, mm. */
const EXACT = 0.01;

/** Spots that a line or road holds at another height. */
export function spotFindings(land: Land, field: Field): readonly Finding[] {
  return land.spots.flatMap(({ x, y, height }, i) => {
    const is = Math.max(0, field(x, y));
    if (Math.abs(is - height) <= EXACT) return [];
    return [
      found({
        ...{ rule: 'spot-on-line', level: 'care', where: `spot-${i + 1}`, figure: is, limit: height },
        what: say`The spot at ${length(x)}, ${length(y)} asks for ${length(height)}, and a line or its slope holds the ground at ${length(is)} there.`,
        mend: say`Write ${length(is)} for the spot, or move it off the line's slopes.`,
        source: 'geometry',
      }),
    ];
  });
}

/** Layers that no sheet holds in one piece, and ground without foam to build it from. */
export function foamFindings(land: Land, layers: readonly BuiltLayer[], highest: number): readonly Finding[] {
  if (land.foam === null) return highest > 0 ? [noFoam(highest)] : [];
  const { foam } = land;
  const [longest, widest] = [
    Math.max(0, ...foam.sizes.map((size) => size.length)),
    Math.max(0, ...foam.sizes.map((size) => size.width)),
  ];
  return layers
    .filter(({ joints }) => joints.length > 0)
    .map(({ id, pieces }) =>
      found({
        ...{ rule: 'layer-over-sheet', level: 'note', where: id, figure: pieces.length, limit: 1, unit: 'count' },
        what: say`${id} is larger than any sheet of ${foam.id} (${length(longest)} by ${length(widest)}) and is joined from ${String(pieces.length)} pieces.`,
        mend: say`Butt the pieces on a line of glue; the layer above has its joints elsewhere.`,
        source: PRACTICE,
      }),
    );
}

function noFoam(highest: number): Finding {
  return found({
    ...{ rule: 'foam-unnamed', level: 'care', where: 'ground', figure: highest, limit: 0 },
    what: say`The ground rises to ${length(highest)}, and no foam is named to build it from.`,
    mend: say`Write foam: and a sheet of foam under ground, such as xps-25.`,
    source: PRACTICE,
  });
}

/** Covers that don't say how thick they are laid, so that nothing can be counted. */
export function coverFindings(zones: readonly CoveredZone[]): readonly Finding[] {
  return zones.flatMap(({ quantities }) =>
    quantities
      .filter(({ stock, buy }) => stock !== null && buy === null)
      .map(({ stock, for: zone }) =>
        found({
          ...{ rule: 'cover-uncounted', level: 'note', where: zone },
          what: say`${stock ?? ''} does not say what area one unit covers or how thick it is laid, so none is counted for ${zone}.`,
          mend: say`Give the stock covers:, or fills: with depth:.`,
          source: PRACTICE,
        }),
      ),
  );
}

/** Ground that nobody can reach from an edge, for plaster now and derailed coaches later. */
export function reachFindings(land: Land, sites: readonly Site[], reach: number | null): readonly Finding[] {
  if (reach === null) return [];
  return land.forms.flatMap((form) => {
    const top = topOf(form);
    const nearest = sites.map((site) => edgeDistance(site, top)).filter((far) => far >= 0);
    const far = nearest.length === 0 ? 0 : Math.max(...nearest);
    if (top === null || far <= reach) return [];
    return [
      found({
        ...{ rule: 'hill-out-of-reach', level: 'care', where: form.id, figure: far, limit: reach },
        what: say`The top of ${form.id} is ${length(far)} from the nearest edge; you reach ${length(reach)}.`,
        mend: say`Move it ${atLeast(far - reach)} towards an edge, or make it lift off.`,
        source: 'the reach written in notebook.md',
      }),
    ];
  });
}

function topOf(form: Form): readonly [number, number] | null {
  return form.kind === 'hill' ? form.top : null;
}

/** Distance from a point on a bench to its nearest edge; -1 off the bench. */
function edgeDistance(site: Site, point: readonly [number, number] | null): number {
  if (point === null) return -1;
  const [x, y] = toBench(site.pose, point);
  return Math.min(x, y, site.bench.length - x, site.bench.width - y);
}

/** What stands over the deck when a bench is stood on its edge to go through a door. */
export function standingFindings(highest: number, water: number, mustMove: boolean): readonly Finding[] {
  if (!mustMove || (highest <= 0 && water === 0)) return [];
  return [
    found({
      ...{ rule: 'land-on-edge', level: 'note', where: 'ground', figure: highest, limit: 0 },
      what: say`Stood on its edge, the bench is ${length(highest)} thicker by its land${water > 0 ? '; resin that has not cured runs, and loose trees and ballast fall' : '; loose trees and ballast fall'}.`,
      mend: say`Glue what stands, wait out every cure, and take off what lifts before it is moved.`,
      source: PRACTICE,
    }),
  ];
}
