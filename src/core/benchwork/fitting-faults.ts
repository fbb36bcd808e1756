import type { Fault } from '../units/problem.ts';
import { baysBehind } from './drawers/bays.ts';
import { fault, mm } from './fault.ts';
import { lappedGrid } from './grid.ts';
import type { BenchInput, BenchworkInput, DrawersInput, LegsInput, ShelvesInput } from './input.ts';

const MOST_LAYERS = 12;
const LONGEST = 3000;

/** What is wrong with drawers, legs and shelves as they are written; whether they fit is for findings. */
export function fittingFaults(input: BenchworkInput, bench: BenchInput): readonly Fault[] {
  const roles = Object.keys(input.materials);
  return [
    ...(bench.drawers ?? []).flatMap((set) => [
      ...bayFaults(input, bench, set),
      ...sizeFaults(set.at, drawerSizes(set)),
      ...overlapFaults(set),
      ...roleFaults(roles, set.at, { material: set.material, bottom: set.bottom }),
    ]),
    ...(bench.shelves ?? []).flatMap((set) => [
      ...bayFaults(input, bench, set),
      ...sizeFaults(set.at, set.below === null ? {} : { below: set.below }),
      ...roleFaults(roles, set.at, { material: set.material }),
    ]),
    ...(bench.legs == null ? [] : legFaults(bench.legs, roles)),
  ];
}

function bayFaults(input: BenchworkInput, bench: BenchInput, set: DrawersInput | ShelvesInput): readonly Fault[] {
  const grid = lappedGrid(input, bench);
  if (grid === null) return [];
  const count = baysBehind(grid, set.side).length;
  return set.bays.flatMap((bay, i) => {
    const at = `${set.at}.bays.${i}`;
    if (!Number.isInteger(bay) || bay < 1 || bay > count) {
      const what = `the ${set.side} has no bay ${bay}`;
      return [fault('bay-unknown', at, { what, mend: `count from the left as you stand before it: 1 to ${count}` })];
    }
    if (set.bays.indexOf(bay) === i) return [];
    return [fault('bay-twice', at, { what: `bay ${bay} is named twice`, mend: 'leave one of them out' })];
  });
}

/** An overlap is of overlaid faces alone: a cut-out face is its opening less the bit all round. */
function overlapFaults({ at, faces, gaps }: DrawersInput): readonly Fault[] {
  if (faces === 'overlaid' || gaps == null || gaps.overlap === null) return [];
  const what = 'a face that is cut out of its opening does not overlap it';
  const mend = 'take overlap out, or write "faces: overlaid"; the gap round a cut-out face is as wide as bit';
  return [fault('gap-unused', `${at}.gaps.overlap`, { what, mend })];
}

function drawerSizes({ slides, bit, opening, ligament, gaps }: DrawersInput): Readonly<Record<string, number>> {
  return {
    'slides.length': slides.length,
    'slides.clearance': slides.clearance,
    bit,
    ...(opening === null ? {} : { opening }),
    ...(ligament === null ? {} : { ligament }),
    ...(gaps?.under == null ? {} : { 'gaps.under': gaps.under }),
    ...(gaps?.liftOut == null ? {} : { 'gaps.lift-out': gaps.liftOut }),
    ...(gaps?.overlap == null ? {} : { 'gaps.overlap': gaps.overlap }),
  };
}

function sizeFaults(at: string, sizes: Readonly<Record<string, number>>): readonly Fault[] {
  return Object.entries(sizes).flatMap(([name, value]) => {
    if (value > 0 && value <= LONGEST) return [];
    const mend = `it must be more than 0 and at most ${mm(LONGEST)}`;
    return [fault('size-impossible', `${at}.${name}`, { what: `${name} comes to ${mm(value)}`, mend })];
  });
}

function roleFaults(known: readonly string[], at: string, named: Readonly<Record<string, string>>): readonly Fault[] {
  return Object.entries(named).flatMap(([key, role]) => {
    if (known.includes(role)) return [];
    const what = `nothing says what the ${role} is cut from`;
    return [
      fault('material-missing', `${at}.${key}`, {
        what,
        mend: `use one of ${known.join(', ')}, or add it under materials`,
      }),
    ];
  });
}

function legFaults(legs: LegsInput, roles: readonly string[]): readonly Fault[] {
  const { at, form, layers, width, footWidth, stand } = legs;
  const sizes = {
    ...(width === null ? {} : { width }),
    ...(footWidth === null ? {} : { 'foot-width': footWidth }),
    ...(stand.kind === 'foot' ? { 'feet.travel': stand.travel, 'feet.height': stand.height } : {}),
  };
  const mend = `use a whole number from 1 to ${MOST_LAYERS}`;
  const count =
    Number.isInteger(layers) && layers >= 1 && layers <= MOST_LAYERS
      ? []
      : [fault('leg-layers', `${at}.layers`, { what: `${layers} is no number of layers`, mend })];
  return [
    ...roleFaults(roles, at, { material: legs.material }),
    ...count,
    ...sizeFaults(at, sizes),
    ...formFaults(legs, form),
  ];
}

function formFaults({ at, width, footWidth, layers }: LegsInput, form: LegsInput['form']): readonly Fault[] {
  const words = {
    what: `${form} legs need a width`,
    mend: `add "width: ..." for one half or upright; ${mm(110)} is usual`,
  };
  const needs = form !== 'post' && width === null ? [fault('leg-width-missing', at, words)] : [];
  const wide = width ?? 0;
  const wider = {
    what: `a foot of ${mm(footWidth ?? 0)} is wider than the leg of ${mm(wide)}`,
    mend: `use at most ${mm(wide)}`,
  };
  const foot =
    footWidth !== null && width !== null && footWidth > width ? [fault('foot-width', `${at}.foot-width`, wider)] : [];
  const only = { what: `${form} legs are not glued up in layers`, mend: 'leave layers out, or write "form: post"' };
  const plain = form !== 'post' && layers > 1 ? [fault('leg-layers', `${at}.layers`, only)] : [];
  return [...needs, ...foot, ...plain];
}
