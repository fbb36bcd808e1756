import type { Vector } from '../../geometry/shapes.ts';
import type { Envelope, MatingMark } from '../../stock/part.ts';
import { type Fitting, NOTHING, type Site, saying, together } from '../fitting.ts';
import type { DrawersInput } from '../input.ts';
import { tidy } from '../machining.ts';
import { placedInstance } from '../placed-instance.ts';
import { type BoardCut, boardOf, inBench, onBoard, sideView } from '../side-view.ts';
import { type Bay, baysBehind } from './bays.ts';
import { boxJoints, boxParts } from './box-parts.ts';
import { drawerCares, drawerHalts } from './checks.ts';
import { BAR, faceJoints, facePart, pullFigures, pullPart, pullScrews } from './face-parts.ts';
import { type DrawerFigures, drawerFigures } from './figures.ts';
import {
  boredFront,
  boredSpacers,
  boxHardware,
  drawerFasteners,
  faceHole,
  faceScrews,
  pullHole,
  spacerJoints,
} from './hold.ts';

/** Every drawer of a bench that its bays allow, and a halt for each that they don't; `taken` is what stands there already. */
export function fitDrawers(site: Site, sets: readonly DrawersInput[], taken: readonly Envelope[]): Fitting {
  const fitted: Fitting[] = [];
  for (const input of sets) {
    const bays = baysBehind(site.grid, input.side).filter(({ number }) => input.bays.includes(number));
    const before = fitted.length;
    for (const bay of bays) {
      const standing = [...taken, ...fitted.flatMap(({ envelopes }) => envelopes)];
      fitted.push(fitDrawer(site, input, { bay, taken: standing }));
    }
    const first = fitted.slice(before).find(({ instances }) => instances.length > 0);
    if (first !== undefined) fitted.push(saying(...drawerCares(site, input, first.envelopes[0]?.of ?? 'drawer')));
  }
  return together(fitted);
}

function fitDrawer(
  site: Site,
  input: DrawersInput,
  at: { readonly bay: Bay; readonly taken: readonly Envelope[] },
): Fitting {
  const halts = drawerHalts(site, input, at);
  if (halts.length > 0) return saying(...halts);
  const drawer = drawerFigures(site, input, at.bay);
  return drawer === null ? NOTHING : made(site, drawer);
}

function made(site: Site, drawer: DrawerFigures): Fitting {
  const { input } = drawer;
  const view = sideView(site.grid, input.side);
  const wide = tidy(drawer.face.patch.x1 - drawer.face.patch.x0);
  const pull = pullFigures(drawer.t, wide, site.step);
  const holes = input.pull === 'bar' ? pullScrews(drawer, pull) : [];
  const bar = input.pull === 'bar' ? [pullPart(drawer, pull)] : [];
  const bores = [
    { holes, hole: pullHole(site, drawer) },
    { holes: faceScrews(drawer), hole: faceHole(site, drawer) },
  ];
  const box = boxParts(drawer).map((part) =>
    part.id === `${drawer.id}.front` ? boredFront(part, drawer, bores) : part,
  );
  const parts = [...box, facePart(drawer, holes, pullHole(site, drawer)), ...bar, ...boredSpacers(site, drawer)];
  const held = drawerFasteners(site, drawer, { view, pull, holes });
  const counted = boxHardware(site, drawer);
  return {
    instances: parts.map((part) => placedInstance(view, part)),
    joints: [...boxJoints(drawer), ...faceJoints(drawer), ...spacerJoints(site, drawer)],
    envelopes: [pulledOut(site, drawer)],
    cuts: [openingCut(site, drawer)],
    fasteners: held.fasteners,
    hardware: [...held.hardware, ...counted.hardware],
    findings: [...held.findings, ...counted.findings],
  };
}

/** The space of the drawer from closed to pulled out by its slides' length. */
function pulledOut(site: Site, drawer: DrawerFigures): Envelope {
  const { box, outer, input, face } = drawer;
  const front = tidy(outer - (input.pull === 'bar' ? BAR.out : 0) - input.slides.length);
  const [u0, u1] = [Math.min(box.u[0], face.patch.x0), Math.max(box.u[1], face.patch.x1)];
  const [w0, w1] = [Math.min(box.w[0], face.patch.y0), Math.max(box.w[1], face.patch.y1)];
  const [low, high]: readonly [Vector, Vector] = [
    [u0, front, w0],
    [u1, box.v[1], w1],
  ];
  return {
    id: `${drawer.id}.pulled-out`,
    of: drawer.id,
    kind: 'drawer',
    ...inBench(sideView(site.grid, input.side), low, high),
  };
}

function openingCut(site: Site, { id, opening, input }: DrawerFigures): BoardCut {
  const { x0, x1, y0, y1 } = opening.patch;
  const [right, low] = onBoard(site.grid, input.side, [x1, y0]);
  const [left, high] = onBoard(site.grid, input.side, [x0, y1]);
  const mark: MatingMark = { text: `${id}.face`, side: 'face', at: [(left + right) / 2, low / 2], kind: 'mate' };
  const radius = input.faces === 'cut-out' ? opening.radius : input.bit / 2;
  return {
    board: boardOf(input.side),
    feature: {
      id: '',
      for: `${id}.face`,
      kind: 'opening',
      patch: { x0: right, x1: left, y0: low, y1: high },
      corner: radius,
    },
    marks: input.faces === 'cut-out' ? [mark] : [],
  };
}
