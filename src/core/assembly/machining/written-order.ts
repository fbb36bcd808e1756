import type { Finding } from '../../finding.ts';
import type { Part } from '../../stock/part.ts';
import { say } from '../../units/say.ts';
import { type Operation, type Surface, USUAL_MACHINES } from './operation.ts';
import { operationsOf } from './operations.ts';
import { lostTo, sequenced } from './sequence.ts';

const PRACTICE = 'mitres, dados and grooves before a taper, trimming last: common practice, no source';

/**
 * Halts of a part whose written order, operation ids or kinds, takes away what a later cut is set against, each with the
 * reason and the right order; names that no operation has are told.
 */
export function checkWrittenOrder(part: Part, order: readonly string[]): readonly Finding[] {
  const operations = operationsOf(part, USUAL_MACHINES);
  const written = order.flatMap((name) => operations.filter(({ id, kind }) => id === name || kind === name));
  const unknown = order.filter((name) => !operations.some(({ id, kind }) => id === name || kind === name));
  const right = sequenced(operations).filter((one) => written.includes(one));
  const broken = written.flatMap((earlier, i) => {
    const later = written.slice(i + 1).filter((one) => lostTo(one, earlier).length > 0);
    return later.length === 0 ? [] : [brokenFinding(part, { earlier, later, right })];
  });
  return [...unknown.map((name) => unknownFinding(part, name, operations)), ...broken];
}

type Broken = {
  readonly earlier: Operation;
  /** cuts set against what the earlier one takes away, one at least */
  readonly later: readonly Operation[];
  readonly right: readonly Operation[];
};

function brokenFinding(part: Part, { earlier, later, right }: Broken): Finding {
  const lost: readonly Surface[] = [...new Set(later.flatMap((one) => lostTo(one, earlier)))];
  const after = later.map(({ id }) => id).join(' and ');
  const surfaces = lost.map((surface) => surface.replace('edge.', 'straight edge at the ')).join(' and the ');
  return {
    ...told(part, 'needed-after-destroyed'),
    level: 'halt',
    what: say`${earlier.id} is written before ${after}, and it takes away the ${surfaces} that ${later.length === 1 ? `${after} is` : 'these are'} set against`,
    mend: say`cut in this order: ${right.map(({ id }) => id).join(', ')}`,
  };
}

function unknownFinding(part: Part, name: string, operations: readonly Operation[]): Finding {
  return {
    ...told(part, 'operation-unknown'),
    level: 'care',
    what: say`${name} is no operation of ${part.id}`,
    mend: say`its operations are ${operations.map(({ id }) => id).join(', ')}`,
  };
}

function told(part: Part, rule: string): Omit<Finding, 'level' | 'what' | 'mend'> {
  const { id: where, chapter } = part;
  return { rule, where, chapter, figure: null, limit: null, unit: 'count', source: PRACTICE, accepted: null };
}
