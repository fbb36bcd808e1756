import type { Pose, Vector } from '../../geometry/shapes.ts';
import type { Joint } from '../../stock/part.ts';
import { atLeast, length, say } from '../../units/say.ts';
import type { Fitting, Site } from '../fitting.ts';
import { fetched } from '../hardware/count.ts';
import { type Drive, type Driven, drivenTogether, metalScrewed, screwed } from '../hardware/driven.ts';
import { clearanceHole } from '../hardware/screws.ts';
import type { Instance } from '../instance.ts';
import { joint } from '../joints.ts';
import { tidy } from '../machining.ts';
import type { Outside } from '../outside.ts';
import { told } from '../told.ts';
import { bored, type PullFigures, spacerParts } from './face-parts.ts';
import type { DrawerFigures } from './figures.ts';

type Spot = readonly [number, number];

const OUT: Vector = [0, -1, 0];
/** Wood kept round a screw, mm; common practice, no source. */
const ROUND_SCREW = 2;
/** Metal of a slide's member under a screw's head; common practice, no source. mm. */
const SLIDE_METAL = 1.2;
/** The first and last screw of a slide from its ends, as cabinets are bored for 32 mm rows; common practice, no source. mm. */
const SLIDE_END = 37;

/** What the pull's screws go through and how far they may go into the bar. */
function pullWood({ box, t }: DrawerFigures, pull: PullFigures) {
  return { through: tidy(box.t + t), into: pull.deep };
}

/** Clearance hole for the pull's screws, mm. */
export function pullHole({ goods }: Site, drawer: DrawerFigures): number {
  return clearanceHole(goods, { through: tidy(drawer.box.t + drawer.t), into: 20 });
}

/** The box's front, bored for the pull and for the screws that hold the face. */
export function boredFront(
  part: Instance,
  drawer: DrawerFigures,
  bores: readonly { readonly holes: readonly Spot[]; readonly hole: number }[],
): Instance {
  const [x, , z] = part.pose.origin;
  const own = ([u, w]: Spot): Spot => [tidy(x - u), tidy(w - z)];
  const holes = bores.flatMap(({ holes: spots, hole }) => bored(spots.map(own), hole));
  return drawer.box.t > 0 ? { ...part, features: [...part.features, ...holes] } : part;
}

/** Clearance hole for the screws that hold the face, mm. */
export function faceHole({ goods }: Site, { box, t }: DrawerFigures): number {
  return clearanceHole(goods, { through: box.t, into: t });
}

type Holding = { readonly view: Pose; readonly pull: PullFigures; readonly holes: readonly Spot[] };

/** Screws of a drawer: face from inside the box, pull from inside through both, spacers into the bay's walls. */
export function drawerFasteners(site: Site, drawer: DrawerFigures, { view, pull, holes }: Holding): Driven {
  const inner = tidy(drawer.box.v[0] + drawer.box.t);
  const of = (name: string) => `${drawer.id}.${name}`;
  const face = screwed(
    site.goods,
    {
      view,
      holds: `butt.${of('front')}.${of('face')}`,
      heads: faceScrews(drawer).map(([u, w]): Vector => [u, inner, w]),
      direction: OUT,
      through: [of('front'), of('face')],
    },
    { through: drawer.box.t, into: drawer.t },
  );
  const bar = screwed(
    site.goods,
    {
      view,
      holds: `butt.${of('face')}.${of('pull')}`,
      heads: holes.map(([u, w]): Vector => [u, inner, w]),
      direction: OUT,
      through: [of('front'), of('face'), of('pull')],
    },
    pullWood(drawer, pull),
  );
  const all = drivenTogether([face, bar, ...spacerScrews(site, drawer, view), ...slideScrews(site, drawer, view)]);
  const pulls = pullFindings(drawer, { pull, diameter: bar.fasteners[0]?.diameter ?? 4 });
  return { ...all, findings: [...all.findings, ...pulls] };
}

/** Four, in the corners of what box and face share, clear of the bottom's groove. */
export function faceScrews({ box, face }: DrawerFigures): readonly Spot[] {
  const inset = box.t + 20;
  const us = [Math.max(box.u[0] + inset, face.patch.x0 + 20), Math.min(box.u[1] - inset, face.patch.x1 - 20)];
  const low = Math.max(box.w[0] + box.groove.up + box.groove.wide + 10, face.patch.y0 + 12);
  const high = Math.min(box.w[1] - 12, face.patch.y1 - 12);
  return us.flatMap((u) => [low, high].map((w): Spot => [tidy(u), tidy(w)]));
}

function pullFindings(
  { id, t, input }: DrawerFigures,
  { pull, diameter }: { readonly pull: PullFigures; readonly diameter: number },
) {
  const needed = diameter / 2 + ROUND_SCREW;
  if (input.pull !== 'bar' || pull.solid >= needed) return [];
  const what = say`above its finger groove the pull keeps ${length(2 * pull.solid)}, too little round screws of ${length(diameter)}`;
  const mend = say`cut pulls from wood at least ${atLeast(3 * needed)} thick, or write "pull: none"`;
  return [
    told('halt', { rule: 'pull-screw-outside', where: `${id}.pull`, what, figure: t, limit: tidy(3 * needed), mend }),
  ];
}

/** What stands at each wall of a bay: a strut, or the frame's board. */
export function wallsOf({ grid }: Site, side: Outside, number: number): readonly [string, string] {
  const lengthwise = side === 'front' || side === 'back';
  const family = lengthwise ? 'across' : 'along';
  const count = lengthwise ? grid.across.length : grid.along.length;
  const turned = side === 'back' || side === 'left';
  const [first, last] = lengthwise ? ['end.left', 'end.right'] : ['side.front', 'side.back'];
  const wall = (i: number) => {
    const n = turned ? count + 1 - i : i;
    if (n === 0) return first ?? '';
    return n > count ? (last ?? '') : `strut.${family}-${n}`;
  };
  return [wall(number - 1), wall(number)];
}

const spacerIds = ({ id }: DrawerFigures) => [`spacer.${id.slice(7)}-left`, `spacer.${id.slice(7)}-right`] as const;

/** Spacers screwed to the bay's walls. */
export function spacerJoints(site: Site, drawer: DrawerFigures): readonly Joint[] {
  const walls = wallsOf(site, drawer.input.side, drawer.number);
  return spacerIds(drawer).map((id, i): Joint => ({ ...joint('butt', [walls[i] ?? '', id], 0), held: 'screws' }));
}

/** Where a spacer's screws go, from its front end and from its lower edge: off the middle, where the slide's own go; mm. */
function spacerHoles({ spacer }: DrawerFigures): readonly Spot[] {
  const up = tidy((spacer.w[1] - spacer.w[0]) / 5);
  return [0.1, 0.5, 0.9].map((share): Spot => [tidy(share * spacer.long), up]);
}

/** Spacers bored for the screws that hold them to the bay's walls; both hands alike, since the places are even from both ends. */
export function boredSpacers({ goods }: Site, drawer: DrawerFigures): readonly Instance[] {
  const hole = clearanceHole(goods, { through: drawer.t, into: drawer.t });
  const features = bored(spacerHoles(drawer), hole);
  return spacerParts(drawer).map((part) => ({ ...part, features: [...part.features, ...features] }));
}

function spacerScrews(site: Site, drawer: DrawerFigures, view: Pose): readonly Driven[] {
  const walls = wallsOf(site, drawer.input.side, drawer.number);
  const { bay, spacer, t } = drawer;
  const spots = spacerHoles(drawer);
  return spacerIds(drawer).map((id, i) => {
    const u = i === 0 ? tidy(bay.u[0] + t) : tidy(bay.u[1] - t);
    const direction: Vector = i === 0 ? [-1, 0, 0] : [1, 0, 0];
    const holds = `butt.${walls[i]}.${id}`;
    const heads = spots.map(([along, up]): Vector => [u, tidy(t + along), tidy(spacer.w[0] + up)]);
    return screwed(
      site.goods,
      { view, holds, heads, direction, through: [id, walls[i] ?? ''] },
      { through: t, into: t },
    );
  });
}

/** Where a slide's screws go, from its front end: near both ends, clear of the box's corner joints, and in the middle; mm. */
function slideSpots({ box, spacer }: DrawerFigures): readonly number[] {
  const end = Math.min(Math.max(SLIDE_END, 2 * box.slot + SLIDE_METAL), spacer.long / 4);
  return [tidy(end), tidy(spacer.long / 2), tidy(spacer.long - end)];
}

/** One member of a slide: what it is screwed to, the wood's face, where its front end lies, and the way its screws go. */
type SlideMember = {
  readonly piece: string;
  readonly u: number;
  readonly v: number;
  readonly way: Vector;
  readonly into: number;
};

/** Screws of the slides, all at the middle of the box's height: into the outside of its sides, and into the spacers. */
function slideScrews(site: Site, drawer: DrawerFigures, view: Pose): readonly Driven[] {
  const { box, bay, t } = drawer;
  const w = tidy((box.w[0] + box.w[1]) / 2);
  const spots = slideSpots(drawer);
  const [left, right]: readonly [Vector, Vector] = [
    [-1, 0, 0],
    [1, 0, 0],
  ];
  const drive = (name: string, { piece, u, v, way, into }: SlideMember) => {
    const heads = spots.map((along): Vector => [tidy(u - way[0] * SLIDE_METAL), tidy(v + along), w]);
    const holds = `slide.${drawer.id}.${name}`;
    const one: Drive = { view, holds, heads, direction: way, through: [piece] };
    return metalScrewed(site.goods, one, { through: SLIDE_METAL, into });
  };
  const [first, last] = spacerIds(drawer);
  const side = (name: string) => ({ piece: `${drawer.id}.${name}`, v: box.v[0], into: box.t });
  return [
    drive('side-left', { ...side('side-left'), u: box.u[0], way: right }),
    drive('side-right', { ...side('side-right'), u: box.u[1], way: left }),
    drive('spacer-left', { piece: first, u: tidy(bay.u[0] + t), v: t, way: left, into: t }),
    drive('spacer-right', { piece: last, u: tidy(bay.u[1] - t), v: t, way: right, into: t }),
  ];
}

/** Slides, and a catch, so that it stays shut when the table rolls. */
export function boxHardware(site: Site, drawer: DrawerFigures): Pick<Fitting, 'hardware' | 'findings'> {
  const where = drawer.id;
  const slide = fetched(site.goods, { form: 'slide', length: drawer.input.slides.length, where }, 1);
  const catches = fetched(site.goods, { form: 'catch', where }, 1);
  return {
    hardware: [...slide.hardware, ...catches.hardware],
    findings: [...slide.findings, ...catches.findings],
  };
}
