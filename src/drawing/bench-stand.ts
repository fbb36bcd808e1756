import type { Vector } from '../core/geometry/shapes.ts';
import { dot } from '../core/geometry/vector.ts';
import type { CasterStock } from '../core/stock/goods.ts';
import { feetOf, seenFeet } from './bench-feet.ts';
import type { BenchAsk, Extents } from './bench-stage.ts';
import { saidLength } from './figures.ts';
import { isLeg } from './leg-groups.ts';
import type { Mark } from './mark.ts';
import type { Gaze, Seen } from './scene.ts';
import { lettering } from './text.ts';
import { paperX, paperY, type View } from './view.ts';

/** A caster and where its plate's middle is, bench coordinates. */
type Caster = { readonly id: string; readonly at: Vector; readonly stock: CasterStock };

/** Thickness of a caster's plate, mm; common practice, no source. */
const PLATE = 3;
/** Sides of the polygon that stands for a wheel. */
const SIDES = 48;

type Standing = Pick<BenchAsk, 'notebook' | 'bench'>;

/** The casters under a bench's legs. */
function castersOf({ notebook: { parts, envelopes, hardware, stock }, bench }: Standing): readonly Caster[] {
  const ids = parts.filter((part) => part.bench === bench.id).flatMap(({ places }) => places.map(({ id }) => id));
  return (envelopes ?? [])
    .filter(({ kind, of }) => kind === 'caster' && ids.some((id) => id.startsWith(`${of}.`)))
    .flatMap(({ id, of, min, max }) => {
      const used = (hardware ?? []).filter(({ where }) => where === of).map(({ item }) => item);
      const own = (stock ?? []).filter((one) => one.kind === 'caster').filter((one) => used.includes(one.id));
      // a leg with two feet may stand on casters of two kinds: the circle tells which is here
      const isHere = (one: CasterStock) =>
        Math.abs(2 * one.swivelRadius - (max[0] - min[0])) < 0.01 && Math.abs(one.overallHeight - max[2]) < 0.01;
      const found = own.find(isHere) ?? own[0];
      const at: Vector = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, max[2]];
      return found === undefined ? [] : [{ id, at, stock: found }];
    });
}

/** The bench's casters as they are seen, each rolled so that its wheel trails inwards, square to the reader. */
export function seenCasters(ask: Standing, gaze: Gaze): readonly Seen[] {
  const middle = dot([ask.bench.length / 2, ask.bench.width / 2, 0], gaze.right);
  return castersOf(ask).flatMap(({ id, at, stock }) => {
    const [u, top, near] = [dot(at, gaze.right), at[2], dot(at, gaze.toward)];
    const radius = stock.wheel / 2;
    const trail = Math.max(0, Math.min(stock.swivelRadius - radius, radius)) * (u > middle ? -1 : 1);
    const plate = stock.plate === null ? 0 : (stock.plateThickness ?? PLATE);
    const half = (stock.plate?.[0] ?? 0) / 2;
    const [axle, fork] = [u + trail, radius / 2];
    const wheel = Array.from({ length: SIDES }, (_, i): readonly [number, number] => {
      const turn = (2 * Math.PI * i) / SIDES;
      return [axle + radius * Math.cos(turn), radius + radius * Math.sin(turn)];
    });
    const under = top - plate;
    const shape = (name: string, outline: Seen['areas'][number]['outline'], ahead: number): Seen => ({
      id: `${id}.${name}`,
      label: '',
      role: 'caster',
      areas: [{ outline, holes: [] }],
      near: near + ahead,
      far: near - 1,
    });
    return [
      shape('wheel', wheel, 0),
      shape(
        'fork',
        [
          [u - fork, under],
          [axle - fork / 2, radius],
          [axle + fork / 2, radius],
          [u + fork, under],
        ],
        1,
      ),
      ...(plate === 0
        ? []
        : [
            shape(
              'plate',
              [
                [u - half, under],
                [u + half, under],
                [u + half, top],
                [u - half, top],
              ],
              2,
            ),
          ]),
    ];
  });
}

/** What the bench's legs stand on, as it is seen: casters or feet. */
export function seenStands(ask: Standing, gaze: Gaze): readonly Seen[] {
  return [...seenCasters(ask, gaze), ...seenFeet(ask, gaze)];
}

/** Whether a bench stands on the floor by its own legs; what it hangs on otherwise is not in the drawing. */
export function standsOnFloor(pieces: readonly Seen[]): boolean {
  return pieces.some(isLeg);
}

/** The floor: a line under the bench, named at its left. */
export function floorMarks(view: View, box: Extents): readonly Mark[] {
  const y = paperY(view, 0);
  const [from, to] = [paperX(view, box.u0) - 12, paperX(view, box.u1) + 4];
  return [
    { kind: 'line', from: [from, y], to: [to, y], pen: 'edge', role: 'symbol' },
    lettering('Floor', [from, y - 1.2], { role: 'label' }),
  ];
}

/** What the bench stands on, in a line of words; none for what stands on its own legs. */
export function standNotes(ask: BenchAsk): readonly string[] {
  const casters = castersOf(ask);
  if (casters.length === 0) return feetNotes(ask);
  const say = (mm: number) => saidLength(mm, ask.options.unit);
  const heights = [...new Set(casters.map(({ at }) => at[2]))].map(say).join(' and ');
  const wheels = [...new Set(casters.map(({ stock }) => stock.wheel))].map(say).join(' and ');
  return [
    `On ${casters.length} casters ${heights} high, wheels ${wheels}, turned towards the reader.`,
    lockWords(casters),
  ];
}

/** `front left` of `table.leg.front-left.caster`. */
function footName({ id }: Caster): string {
  return /leg\.([a-z-]+)\.caster$/.exec(id)?.[1]?.replaceAll('-', ' ') ?? id;
}

/** Which casters can be locked. */
function lockWords(casters: readonly Caster[]): string {
  const locked = casters.filter(({ stock }) => stock.locks);
  if (locked.length === casters.length) return 'Every caster locks.';
  return locked.length === 0 ? 'No caster locks.' : `Casters that lock: ${locked.map(footName).join(', ')}.`;
}

function feetNotes(ask: BenchAsk): readonly string[] {
  const feet = feetOf(ask);
  const heights = [...new Set(feet.map(({ at }) => at[2]))].map((mm) => saidLength(mm, ask.options.unit));
  return feet.length === 0 ? [] : [`On ${feet.length} feet that screw, ${heights.join(' and ')} high as drawn.`];
}
