import type { Vector } from '../../geometry/shapes.ts';
import type { Envelope, Joint } from '../../stock/part.ts';
import { type Bay, baysBehind, standingIn } from '../drawers/bays.ts';
import { bored } from '../drawers/face-parts.ts';
import { bayAcross, LEAST_LIGAMENT, type Span } from '../drawers/figures.ts';
import { wallsOf } from '../drawers/hold.ts';
import { type Fitting, NOTHING, type Site, saying, together } from '../fitting.ts';
import { screwed } from '../hardware/driven.ts';
import { clearanceHole } from '../hardware/screws.ts';
import type { Material, ShelvesInput } from '../input.ts';
import type { Instance } from '../instance.ts';
import { joint } from '../joints.ts';
import { tidy } from '../machining.ts';
import { placedInstance } from '../placed-instance.ts';
import { type BoardCut, boardOf, inBench, onBoard, sideView } from '../side-view.ts';
import { bayTaken, CLEAT, handCares, heightHalts, widthHalts } from './checks.ts';

/** A shelf's heights from the floor and its place before its side, mm. */
type Shelf = {
  readonly id: string;
  readonly label: string;
  readonly bay: Bay;
  readonly u: Span;
  readonly top: number;
  readonly panel: Material;
  readonly input: ShelvesInput;
};

/** Open shelves on cleats, a panel in each bay that is free, with the side opened before it. */
export function fitShelves(site: Site, sets: readonly ShelvesInput[], taken: readonly Envelope[]): Fitting {
  const fitted: Fitting[] = [];
  for (const input of sets) {
    for (const bay of baysBehind(site.grid, input.side).filter(({ number }) => input.bays.includes(number))) {
      const standing = [...taken, ...fitted.flatMap(({ envelopes }) => envelopes)];
      fitted.push(fitShelf(site, input, { bay, taken: standing }));
    }
  }
  return together(fitted);
}

function fitShelf(
  site: Site,
  input: ShelvesInput,
  { bay, taken }: { readonly bay: Bay; readonly taken: readonly Envelope[] },
): Fitting {
  const { grid } = site;
  const id = `shelf.${bay.side}-${bay.number}`;
  const panel = site.materials[input.material];
  if (panel === undefined) return NOTHING;
  const lowest = tidy(grid.strutUnderside + CLEAT + panel.thickness.mean);
  const top = input.below === null ? lowest : tidy(grid.sideTop - input.below);
  const [first] = standingIn(bay, taken);
  if (first !== undefined) return saying(bayTaken(site, bay, { where: id, taken, first }));
  const halts = [...heightHalts(site, { id, top, lowest }), ...widthHalts(site, bay, id)];
  if (halts.length > 0) return saying(...halts);
  const side = { front: 'H', back: 'HB', left: 'HL', right: 'HR' }[bay.side];
  const made = shelf(site, { id, label: `${side}${bay.number}`, bay, u: bayAcross(site, bay), top, panel, input });
  return together([made, saying(...handCares(site, { id, top, lowest }))]);
}

function shelf(site: Site, one: Shelf): Fitting {
  const { grid } = site;
  const pose = sideView(grid, one.bay.side);
  const [u0, u1] = one.u;
  const space = inBench(pose, [u0, 0, one.top], [u1, tidy(grid.t + one.bay.deep), grid.sideTop]);
  const cleats = (['left', 'right'] as const).map((hand) => cleat(site, one, hand));
  const screws = (['left', 'right'] as const).map((hand) => cleatScrews(site, one, hand));
  return {
    ...NOTHING,
    instances: [panelPart(site, one), ...cleats].map((part) => placedInstance(pose, part)),
    joints: shelfJoints(site, one),
    envelopes: [{ id: `${one.id}.space`, of: one.id, kind: 'shelf', ...space }],
    cuts: [opening(site, one)],
    fasteners: screws.flatMap(({ fasteners }) => fasteners),
    findings: screws.flatMap(({ findings }) => findings),
  };
}

function panelPart({ grid }: Site, one: Shelf): Instance {
  const gap = grid.clearance;
  const [length_, width] = [tidy(one.u[1] - one.u[0] - 2 * gap), tidy(one.bay.deep - 2 * gap)];
  const t = one.panel.thickness.mean;
  return {
    id: `${one.id}.panel`,
    role: 'shelf',
    material: one.input.material,
    label: `${one.label}A`,
    blank: { length: length_, width, thickness: t, grain: 'length' },
    features: [],
    pose: {
      origin: [tidy(one.u[0] + gap), tidy(grid.t + gap), tidy(one.top - t)],
      x: [1, 0, 0],
      y: [0, 1, 0],
      z: [0, 0, 1],
    },
    marks: [{ text: 'up', side: 'face', at: [length_ / 2, width / 2], kind: 'up' }],
  };
}

function cleatLow({ top, panel }: Shelf): number {
  return tidy(top - panel.thickness.mean - CLEAT);
}

function cleat({ grid, goods }: Site, one: Shelf, hand: 'left' | 'right'): Instance {
  const long = one.bay.deep;
  const low = cleatLow(one);
  const left = hand === 'left';
  return {
    id: `${one.id}.cleat-${hand}`,
    role: 'shelf-cleat',
    material: 'frame',
    label: `${one.label}${left ? 'B' : 'C'}`,
    blank: { length: long, width: CLEAT, thickness: grid.t, grain: 'length' },
    features: bored(cleatHoles(one), clearanceHole(goods, { through: grid.t, into: grid.t })),
    pose: left
      ? { origin: [one.u[0], grid.t, low], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] }
      : { origin: [one.u[1], tidy(grid.t + long), low], x: [0, -1, 0], y: [0, 0, 1], z: [-1, 0, 0] },
    marks: [{ text: 'up', side: 'face', at: [long / 2, CLEAT * 0.75], kind: 'up' }],
  };
}

function shelfJoints(site: Site, { id, bay }: Shelf): readonly Joint[] {
  const walls = wallsOf(site, bay.side, bay.number);
  return ['left', 'right'].flatMap((hand, i): readonly Joint[] => [
    { ...joint('butt', [walls[i] ?? '', `${id}.cleat-${hand}`], 0), held: 'screws' },
    { ...joint('bearing', [`${id}.cleat-${hand}`, `${id}.panel`], 0), held: 'loose' },
  ]);
}

/** Where a cleat's screws go, from either end and from its lower edge, mm. */
function cleatHoles({ bay }: Shelf): readonly (readonly [number, number])[] {
  return [0.1, 0.5, 0.9].map((share) => [tidy(share * bay.deep), CLEAT / 2]);
}

function cleatScrews(site: Site, one: Shelf, hand: 'left' | 'right') {
  const { grid } = site;
  const left = hand === 'left';
  const wall = wallsOf(site, one.bay.side, one.bay.number)[left ? 0 : 1];
  const u = left ? tidy(one.u[0] + grid.t) : tidy(one.u[1] - grid.t);
  const heads = cleatHoles(one).map(([along, up]): Vector => [u, tidy(grid.t + along), tidy(cleatLow(one) + up)]);
  const id = `${one.id}.cleat-${hand}`;
  const direction: Vector = [left ? -1 : 1, 0, 0];
  const drive = {
    view: sideView(grid, one.bay.side),
    holds: `butt.${wall}.${id}`,
    heads,
    direction,
    through: [id, wall],
  };
  return screwed(site.goods, drive, { through: grid.t, into: grid.t });
}

/** The side is opened from the shelf's top to the ligament under the deck, as wide as a drawer would be. */
function opening(site: Site, { id, bay, u, top }: Shelf): BoardCut {
  const { grid } = site;
  const [x0, y0] = onBoard(grid, bay.side, [tidy(u[1] - grid.t), top]);
  const [x1, y1] = onBoard(grid, bay.side, [tidy(u[0] + grid.t), tidy(grid.sideTop - LEAST_LIGAMENT)]);
  return {
    board: boardOf(bay.side),
    feature: { id: '', for: `${id}.panel`, kind: 'opening', patch: { x0, x1, y0, y1 }, corner: tidy(2.5 * grid.bit) },
    marks: [],
  };
}
