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
  return { fastener: fastener.id, after: blockedBy.length === 0 ? after : null, blockedBy };
}

/** A care for each part that stands where the tool must come to fasteners, all of them in one. */
export function accessFindings(drivings: readonly Driving[], tool: Fastening['tool']): readonly Finding[] {
  const byPart = new Map<string, string[]>();
  for (const { fastener, blockedBy } of drivings)
    for (const part of blockedBy) byPart.set(part, [...(byPart.get(part) ?? []), fastener]);
  return [...byPart].map(([part, fasteners]): Finding => {
    const some = fasteners.length > 3 ? `${fasteners[0]} and ${fasteners.length - 1} more` : fasteners.join(', ');
    return {
      rule: 'no-room-for-the-tool',
      level: 'care',
      where: part,
      chapter: 'benchwork',
      what: say`${part} stands within ${length(tool.radius)} of the axis of ${some}, ${length(tool.length)} behind the head`,
      figure: fasteners.length,
      limit: 0,
      unit: 'count',
      mend: say`drive it before ${part} goes in, turn it round, or use a right-angled driver`,
      source: 'room for a driver from memory; a setting',
      accepted: null,
    };
  });
}
