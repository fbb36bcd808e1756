import type { Bench } from '../benchwork/bench.ts';
import type { Envelope, Part } from '../stock/part.ts';
import { ballastQuantity } from './ballast.ts';
import { boardFoot, boardMass, boardParts, edgeProfiles } from './board.ts';
import { clearWays } from './clear-water.ts';
import { coveredZone } from './cover.ts';
import { insideLoop } from './distance.ts';
import { edgeFindings } from './edge-findings.ts';
import { bentField, type Field, heightField, type Shaping } from './field.ts';
import { builtLayers, foamMasses, foamVolumes } from './foam.ts';
import { glueQuantity } from './glue.ts';
import { type Grid, sampled, usualStep } from './grid.ts';
import type { Land, Path } from './land.ts';
import { coverFindings, foamFindings, reachFindings, spotFindings, standingFindings } from './land-findings.ts';
import { type Headroom, lineFindings } from './line-findings.ts';
import { both, cellsWithin } from './mask.ts';
import type { BuiltWater, SceneryModel } from './model.ts';
import { levelLines, usualSections } from './picture.ts';
import { domainOf, type Site, sitesOf } from './site.ts';
import { spacesUnder, underWater } from './under-water.ts';
import { highestGround } from './volume.ts';
import { waterMass, waterModel, waterQuantities } from './water.ts';
import { waterFindings } from './water-findings.ts';

/** What the land lies on and among. */
export type Around = {
  readonly benches: readonly Bench[];
  readonly parts: readonly Part[];
  readonly envelopes: readonly Envelope[];
  /** lines of track, tunnels and bridges left free */
  readonly lines: readonly Path[];
  readonly scale: string;
  readonly headroom: Headroom;
  /** how far someone reaches, mm; null when nobody said */
  readonly reach: number | null;
  /** whether the bench has to go through doors */
  readonly mustMove: boolean;
};

/** The land on its benches: layers, boards, water, quantities, masses, and what it asks of the benches' parts. */
export function sceneryModel(land: Land, around: Around): SceneryModel {
  const sites = sitesOf(around.benches);
  const shaping: Shaping = { ...land, paths: [...around.lines, ...land.roads] };
  const field = heightField(shaping);
  const grid = gridOf(field, sites);
  const wet = land.water.map(({ outline }) => outline);
  const dry = both(
    cellsWithin(
      grid,
      sites.map(({ loop }) => loop),
    ),
    cellsWithin(grid, [wholeLoop(grid)], wet),
  );
  const boards = land.boards.flatMap((ask) =>
    sites.filter(({ bench }) => bench.id === ask.bench).map((site) => ({ ask, site })),
  );
  const feet = boards.flatMap(({ ask, site }) => boardFoot(ask, site, edgeProfiles(field, site, ask.edge)));
  const within = sites.map(({ loop }) => loop);
  const foam = builtLayers({ grid, land, sites, mask: dry, without: [...wet, ...feet] });
  const water = land.water.map((one) => builtWater(waterModel(one), sites, around));
  const zones = land.zones.map((zone) => coveredZone(zone, { grid, within, without: wet }));
  const tops = land.forms.flatMap((form) =>
    form.kind === 'hill' && within.some((loop) => insideLoop(loop, form.top)) ? [field(...form.top)] : [],
  );
  const highest = Math.max(highestGround(grid, dry), ...tops);
  const edges = boards.flatMap(({ ask, site }) =>
    boardParts(ask, site, field).map((part, i) => ({
      ask,
      part,
      foot: boardFoot(ask, site, edgeProfiles(field, site, ask.edge))[i] ?? [],
    })),
  );
  const mass = [
    ...edges.map(({ ask, part, foot }) => boardMass(part, foot, ask.stock.density)),

    ...foamMasses(foam.layers, land.foam),
    ...zones.flatMap(({ masses }) => masses),
    ...water.map(({ model }) => waterMass(model)),
  ];
  return {
    highest,
    lines: around.lines.map(({ id, points }) => ({ id, points: points.map(({ x, y }) => [x, y] as const) })),
    contours: levelLines(grid, highest),
    sections: usualSections(land, sites, field),
    layers: foam.layers,
    volumes: foamVolumes(foam.layers),
    zones,
    quantities: [
      ...glueQuantity(foam.layers),
      ...zones.flatMap(({ quantities }) => quantities),
      ...land.water.flatMap((one) => waterQuantities(one, waterModel(one))),
      ...ballast(land, around),
    ],
    water: water.map(({ model }) => model),
    masses: mass,
    parts: [...foam.parts, ...edges.map(({ part }) => part)],
    requests: water.flatMap(({ requests }) => requests),
    findings: [
      ...spotFindings(land, field),
      ...edgeFindings(land, field, sites),
      ...lineFindings(land, { bent: bentField(shaping), paths: around.lines }, around.headroom),
      ...foamFindings(land, foam.layers, highest),
      ...water.flatMap(({ model, site }) => waterFindings(model, site)),
      ...coverFindings(zones),
      ...reachFindings(land, sites, around.reach),
      ...standingFindings(highest, water.length, around.mustMove),
    ],
  };
}

function gridOf(field: Field, sites: readonly Site[]): Grid {
  const domain = domainOf(sites);
  return sampled(field, domain, usualStep(domain));
}

function wholeLoop({ x0, y0, dx, dy, nx, ny }: Grid) {
  const [x1, y1] = [x0 + (nx - 1) * dx, y0 + (ny - 1) * dy];
  return [
    [x0 - 1, y0 - 1],
    [x1 + 1, y0 - 1],
    [x1 + 1, y1 + 1],
    [x0 - 1, y1 + 1],
  ] as const;
}

type WaterStage = {
  readonly model: BuiltWater;
  readonly site: Site | null;
  readonly requests: SceneryModel['requests'];
};

/** A water belongs to the bench that holds its first corner, else any other corner. */
function builtWater(
  water: ReturnType<typeof waterModel>,
  sites: readonly Site[],
  { parts, envelopes }: Around,
): WaterStage {
  const site = sites.find(({ loop }) => water.outline.some((corner) => insideLoop(loop, corner))) ?? null;
  if (site === null) return { model: { ...water, under: [], clear: null }, site, requests: [] };
  const { under, requests } = underWater(water, site, parts);
  const spaces = spacesUnder(water, site, envelopes);
  const framed = under.some(({ role }) => role !== 'deck');
  const clear = framed ? clearWays(water, site, parts) : null;
  return { model: { ...water, under: [...under, ...spaces], clear }, site, requests };
}

function ballast(land: Land, { lines, scale }: Around) {
  const stock = land.ballast;
  if (stock === null || lines.length === 0) return [];
  const length = lines.reduce((sum, { points }) => sum + (points[points.length - 1]?.at ?? 0), 0);
  return ballastQuantity(stock, scale, { id: 'lines', length });
}
