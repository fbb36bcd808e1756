import type { Finding } from '../finding.ts';
import type { Fastener } from '../stock/fastener.ts';
import { length, say } from '../units/say.ts';
import type { Driving, Placing } from './assembly.ts';
import type { Body } from './body.ts';
import { inTheToolsWay } from './tool-access.ts';

/** What is fastened, in the order it goes together; room for a driver, mm. */
export type Fastening = {
  readonly fasteners: readonly Fastener[];
  readonly order: readonly Placing[];
  readonly bodies: readonly Body[];
  readonly tool: { readonly radius: number; readonly length: number };
};

/** A bit in a long holder: 8 mm round the axis, 150 mm behind the head; from memory, a setting. */
export const USUAL_TOOL = { radius: 8, length: 150 } as const;

/**
 * Fasteners in the order they are driven: each as soon as all it goes through stands, and the tool's cylinder behind its
 * head is then free; a part that comes later may close it off.
 */
export function fasteningOrder(fastening: Fastening): readonly Driving[] {
  const placedAt = new Map(fastening.order.flatMap(({ parts }, i) => parts.map((part) => [part, i] as const)));
  return fastening.fasteners
    .map((fastener) => drivingOf(fastener, placedAt, fastening))
    .sort((a, b) => (a.after ?? 0) - (b.after ?? 0));
}

function drivingOf(fastener: Fastener, placedAt: ReadonlyMap<string, number>, fastening: Fastening): Driving {
  const moves = fastener.through.map((part) => placedAt.get(part));
  const known = moves.filter((move) => move !== undefined);
  if (known.length < moves.length || known.length === 0) return { fastener: fastener.id, after: null, blockedBy: [] };
  const after = Math.max(...known);
  const there = fastening.bodies.filter(
    ({ id }) => (placedAt.get(id) ?? Number.POSITIVE_INFINITY) <= after && !fastener.through.includes(id),
  );
  const { head, direction } = fastener;
  const blockedBy = inTheToolsWay({ head, direction, ...fastening.tool }, there);
  if (blockedBy.length === 0) return { fastener: fastener.id, after, blockedBy };
  const blocking = there.filter(({ id }) => blockedBy.includes(id));
  return { fastener: fastener.id, after: null, blockedBy, had: roomBehind(fastener, blocking, fastening.tool) };
}

/** How long a tool of this radius may be behind the head before it meets one of the bodies, to 0.1 mm. */
function roomBehind(
  { head, direction }: Fastener,
  bodies: readonly Body[],
  { radius, length: most }: Fastening['tool'],
) {
  let [free, met] = [0, most];
  while (met - free > 0.01) {
    const middle = (free + met) / 2;
    if (inTheToolsWay({ head, direction, radius, length: middle }, bodies).length === 0) free = middle;
    else met = middle;
  }
  return Math.round(free * 10) / 10;
}

/** What is driven, the screws and bolts themselves, and the label on each piece of wood by its id. */
export type Accessed = Pick<Fastening, 'fasteners' | 'tool'> & {
  readonly drivings: readonly Driving[];
  readonly labels: ReadonlyMap<string, string>;
};

/** A care for each part that stands where the tool must come to fasteners, all of them in one. */
export function accessFindings({ drivings, fasteners, tool, labels }: Accessed): readonly Finding[] {
  const byPart = new Map<string, Driving[]>();
  // each fastener is told once, at the first part in its way
  for (const driving of drivings)
    for (const part of driving.blockedBy.slice(0, 1)) byPart.set(part, [...(byPart.get(part) ?? []), driving]);
  const named = (id: string) => (labels.has(id) ? `${labels.get(id)} on ${id}` : id);
  return [...byPart].map(([part, blocked]): Finding => {
    const told = fasteners.filter(({ id }) => blocked.some(({ fastener }) => fastener === id));
    const into = [...new Set(told.map(({ through }) => named(through[0] ?? '')))];
    const had = Math.min(...blocked.map((one) => one.had ?? tool.length));
    const heads = `${told.length} ${told[0]?.form ?? 'screw'}${told.length === 1 ? '' : 's'} in ${into.join(', ')}`;
    return {
      rule: 'no-room-for-the-tool',
      level: 'care',
      where: part,
      chapter: 'benchwork',
      what: say`${length(had)} are free behind the heads of ${heads} up to ${named(part)}; a bit in its holder takes ${length(tool.length)}`,
      figure: had,
      limit: tool.length,
      unit: 'mm',
      mend: say`drive them before ${named(part)} goes in, turn them round, or have a driver no longer than ${length(had)} with its screw`,
      source: 'room for a driver from memory; a setting',
      accepted: null,
    };
  });
}
