import type { Bench } from '../benchwork/bench.ts';
import type { Point } from '../geometry/shapes.ts';
import type { Envelope, Part } from '../stock/part.ts';
import { ballastQuantity } from './ballast.ts';
import { boardFoot, boardMass, boardParts, edgeProfiles } from './board.ts';
import { boardMouths, mouthFeatures } from './board-mouth.ts';
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
import { lineOverWater } from './line-over-water.ts';
import { both, cellsWithin, type Mask } from './mask.ts';
import type { BuiltWater, SceneryModel } from './model.ts';
import { levelLines } from './picture.ts';
import { sectionFindings } from './section-findings.ts';
import { domainOf, type Site, sitesOf } from './site.ts';
import { builtStructure } from './structure.ts';
import { structureFindings } from './structure-findings.ts';
import { trayParts } from './tray.ts';
import { spacesUnder, underWater } from './under-water.ts';
import { landSections } from './usual-sections.ts';
import { highestGround } from './volume.ts';
import { waterMass, waterModel, waterQuantities } from './water.ts';
import { bankFindings } from './water-banks.ts';
import { waterFindings } from './water-findings.ts';
import { type Treeless, treelessLines, zoneFindings } from './zone-findings.ts';

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
  const lie = landLie(land, around);
  const { sites, field, grid, within, wet, dry } = lie;
  const boards = edgeBoards(land, lie, around);
  const without = [...wet, ...boards.map(({ foot }) => foot)];
  const tunnels = { tunnels: land.tunnels, paths: around.lines, headroom: around.headroom };
  const foam = builtLayers({ grid, field, land, sites, mask: dry, without, tunnels });
  const water = land.water.map((one) => builtWater(one, sites, around));
  const treeless = treelessLines(around.lines, land.tunnels);
  const bare = treeless.flatMap(({ strips }) => strips);
  const zones = land.zones.map((zone) => coveredZone(zone, { grid, within, without: wet, treeless: bare }));
  const structures = land.structures.map((one) => builtStructure(one, field, sites));
  const built: BuiltLand = {
    lie,
    structures,
    layers: foam.layers,
    water,
    zones,
    treeless,
    highest: highestOf(land, lie),
  };
  return {
    highest: built.highest,
    lines: around.lines.map(({ id, points }) => ({ id, points: points.map(({ x, y }) => [x, y] as const) })),
    contours: levelLines(grid, built.highest),
    sections: landSections(land, sites, { ...land, field, paths: around.lines, train: around.headroom.train }),
    layers: foam.layers,
    structures,
    volumes: foamVolumes(foam.layers),
    zones,
    quantities: [
      ...glueQuantity(foam.layers),
      ...zones.flatMap(({ quantities }) => quantities),
      ...land.water.flatMap((one) => waterQuantities(one, waterModel(one))),
      ...ballast(land, around),
    ],
    water: water.map(({ model }) => model),
    masses: [
      ...boards.map(({ ask, part, foot }) => boardMass(part, foot, ask.stock.density)),
      ...foamMasses(foam.layers, land.foam),
      ...zones.flatMap(({ masses }) => masses),
      ...water.map(({ model }) => waterMass(model)),
    ],
    parts: [...foam.parts, ...boards.map(({ part }) => part), ...water.flatMap(({ tray }) => tray)],
    requests: water.flatMap(({ requests }) => requests),
    findings: landFindings(land, around, built),
  };
}

/** The ground as a function and a grid, and where it may lie: on a deck and out of the water. */
type Lie = {
  readonly sites: readonly Site[];
  readonly shaping: Shaping;
  readonly field: Field;
  readonly grid: Grid;
  readonly within: readonly (readonly Point[])[];
  readonly wet: readonly (readonly Point[])[];
  readonly dry: Mask;
};

function landLie(land: Land, { benches, lines }: Around): Lie {
  const sites = sitesOf(benches);
  const shaping: Shaping = { ...land, paths: [...lines, ...land.roads] };
  const field = heightField(shaping);
  const grid = gridOf(field, sites);
  const within = sites.map(({ loop }) => loop);
  const wet = land.water.map(({ outline }) => outline);
  const dry = both(cellsWithin(grid, within), cellsWithin(grid, [wholeLoop(grid)], wet));
  return { sites, shaping, field, grid, within, wet, dry };
}

/** Profile boards as parts, each with the strip of deck it stands on. */
function edgeBoards({ boards }: Land, { sites, field }: Lie, { lines, headroom }: Around) {
  const asked = boards.flatMap((ask) =>
    sites.filter(({ bench }) => bench.id === ask.bench).map((site) => ({ ask, site })),
  );
  return asked.flatMap(({ ask, site }) => {
    const feet = boardFoot(ask, site, edgeProfiles(field, site, ask.edge));
    const mouths = boardMouths({ ask, site, field, paths: lines, train: headroom.train });
    const parts = boardParts({ ask, site, field, mouths: (board) => mouthFeatures(mouths, board) });
    return parts.map((part, i) => ({ ask, part, foot: feet[i] ?? [] }));
  });
}

/** The highest ground: the grid's nodes, and the tops of hills, which may lie between them. */
function highestOf({ forms }: Land, { grid, dry, within, field }: Lie): number {
  const tops = forms.flatMap((form) =>
    form.kind === 'hill' && within.some((loop) => insideLoop(loop, form.top)) ? [field(...form.top)] : [],
  );
  return Math.max(highestGround(grid, dry), ...tops);
}

type BuiltLand = {
  readonly lie: Lie;
  readonly layers: SceneryModel['layers'];
  readonly water: readonly WaterStage[];
  readonly structures: SceneryModel['structures'];
  readonly zones: SceneryModel['zones'];
  readonly treeless: readonly Treeless[];
  readonly highest: number;
};

function landFindings(
  land: Land,
  around: Around,
  { lie, structures, layers, water, zones, treeless, highest }: BuiltLand,
) {
  const { field, sites, shaping } = lie;
  return [
    ...spotFindings(land, field),
    ...edgeFindings(land, field, sites),
    ...lineFindings(land, { bent: bentField(shaping), paths: around.lines }, around.headroom),
    ...foamFindings(land, layers, highest),
    ...water.flatMap(({ model, site }) => waterFindings(model, site)),
    ...bankFindings(land, field),
    ...lineOverWater(land, around.lines),
    ...structureFindings(structures, {
      ...{ decks: lie.within, paths: around.lines, tunnels: land.tunnels },
      ...{ water: land.water, headroom: around.headroom },
    }),
    ...coverFindings(zones),
    ...zoneFindings(zones, { land, treeless }),
    ...reachFindings(land, sites, around.reach),
    ...sectionFindings(land, around.lines, sites),
    ...standingFindings(highest, water.length, around.mustMove),
  ];
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
  readonly tray: readonly Part[];
};

/** A water belongs to the bench that holds its first corner, else any other corner. */
function builtWater(
  asked: Land['water'][number],
  sites: readonly Site[],
  { parts, envelopes, lines }: Around,
): WaterStage {
  const water = waterModel(asked);
  const site = sites.find(({ loop }) => water.outline.some((corner) => insideLoop(loop, corner))) ?? null;
  if (site === null) return { model: { ...water, under: [], clear: null }, site, requests: [], tray: [] };
  const { under, requests } = underWater(water, site, parts);
  const tray = asked.tray === null ? [] : trayParts(water, asked.tray, site);
  const spaces = spacesUnder(water, site, envelopes);
  const framed = under.some(({ role }) => role !== 'deck');
  const clear = framed ? clearWays(water, site, { parts, lines }) : null;
  return { model: { ...water, under: [...under, ...spaces], clear }, site, requests, tray };
}

function ballast(land: Land, { lines, scale }: Around) {
  const stock = land.ballast;
  if (stock === null || lines.length === 0) return [];
  const length = lines.reduce((sum, { points }) => sum + (points[points.length - 1]?.at ?? 0), 0);
  return ballastQuantity(stock, scale, { id: 'lines', length });
}
