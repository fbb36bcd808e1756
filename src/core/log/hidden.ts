import type { Finding } from '../finding.ts';
import type { Step } from '../steps/step.ts';
import { say } from '../units/say.ts';
import type { InstanceState } from './part-state.ts';
import type { HiddenSpace, LogRecord } from './record.ts';
import type { StepState } from './step-state.ts';

/** A space out of sight: how it is reached, which step closes it, and what nobody wrote down yet. */
export type HiddenState = HiddenSpace & {
  readonly closedBy: readonly string[];
  readonly closed: string | null;
  readonly entries: readonly string[];
  readonly missing: readonly ('access' | 'photo' | 'test')[];
};

const ASKED = ['access', 'photo', 'test'] as const;

function told(records: readonly LogRecord[], id: string) {
  const found = records.flatMap((record) =>
    record.hidden.filter((one) => one.id === id).map((one) => ({ ...one, entry: record.id })),
  );
  const latest = (key: (typeof ASKED)[number]) => found.findLast((one) => one[key] !== null)?.[key] ?? null;
  return {
    entries: found.map((one) => one.entry),
    access: latest('access'),
    photo: latest('photo'),
    test: latest('test'),
  };
}

/** Every hidden space that a step closes or an entry tells of, in that order. */
export function hiddenSpaces(
  records: readonly LogRecord[],
  steps: readonly Step[],
  states: readonly StepState[],
): HiddenState[] {
  const closing = steps.flatMap((step) => (step.closes === null ? [] : [step.closes]));
  const ids = new Set([...closing, ...records.flatMap((record) => record.hidden.map((one) => one.id))]);
  const byId = new Map(states.map((state) => [state.id, state]));
  return [...ids].map((id) => {
    const closers = steps.filter((step) => step.closes === id).map((step) => step.id);
    const dates = closers.flatMap((step) => byId.get(step)?.date ?? []).sort();
    const words = told(records, id);
    return {
      id,
      ...words,
      closedBy: closers,
      closed: dates[0] ?? null,
      missing: ASKED.filter((key) => words[key] === null),
    };
  });
}

/** A space called closed while pieces that its closing step puts in place, or that the steps before it make, are not made. */
export function closedEarly(
  spaces: readonly HiddenState[],
  steps: readonly Step[],
  parts: readonly InstanceState[],
): Finding[] {
  const toMake = new Map(parts.flatMap(({ made, instance, label }) => (made ? [] : [[instance, label] as const])));
  return spaces.flatMap(({ id, closed, closedBy }): Finding[] => {
    const pieces = closed === null ? [] : closedBy.flatMap((step) => piecesBehind(step, steps));
    const left = [...new Set(pieces)].flatMap((piece) => toMake.get(piece) ?? []);
    if (left.length === 0) return [];
    const step = closedBy[0] ?? id;
    return [
      {
        ...{ rule: 'closed-before-made', level: 'care', where: step, chapter: step.split('.')[0] ?? '' },
        what: say`${id} was closed on ${closed ?? ''}, but the log does not have ${left.join(', ')} as made.`,
        ...{ figure: left.length, limit: 0, unit: 'count' },
        mend: say`Add what stands there to 'made', or take ${step.split('.').at(-1) ?? step} out of 'done' until it does.`,
        ...{ source: 'this notebook', accepted: null },
      },
    ];
  });
}

/** What a step and those before it in its chapter make or put in place. */
function piecesBehind(closer: string, steps: readonly Step[]): readonly string[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const chapter = byId.get(closer)?.chapter;
  const seen = new Set([closer]);
  for (const id of seen)
    for (const before of byId.get(id)?.after ?? []) if (byId.get(before)?.chapter === chapter) seen.add(before);
  return [...seen].flatMap((id) => [...(byId.get(id)?.makes ?? []), ...(byId.get(id)?.fits ?? [])]);
}

const WORDS = { access: 'how to get at it', photo: 'a photo', test: 'the result of a test' } as const;

/** The question before a cover goes on, and the same once it is on. */
export function closingFindings(spaces: readonly HiddenState[], steps: readonly StepState[]): Finding[] {
  const ready = new Set(steps.filter((step) => step.state === 'ready').map((step) => step.id));
  return spaces.flatMap((space) => {
    if (space.missing.length === 0 || space.closedBy.length === 0) return [];
    const next = space.closedBy.find((id) => ready.has(id));
    if (space.closed === null && next === undefined) return [];
    return [closingFinding(space, next ?? space.closedBy[0] ?? '')];
  });
}

function closingFinding(space: HiddenState, step: string): Finding {
  const asked = space.missing.map((key) => WORDS[key]).join(', ');
  const closed = space.closed;
  const what =
    closed === null
      ? say`${step} is next and closes ${space.id}; the log has not got ${asked} yet.`
      : say`${space.id} was closed on ${closed} without ${asked} in the log.`;
  return {
    rule: closed === null ? 'closing-gate' : 'closed-without-record',
    level: closed === null ? 'note' : 'care',
    where: space.id,
    chapter: step.split('.')[0] ?? '',
    what,
    figure: space.missing.length,
    limit: 0,
    unit: 'count',
    mend:
      closed === null
        ? say`Write it under 'hidden' in an entry before the cover goes on.`
        : say`Open it once more while somebody remembers how, and write it under 'hidden'.`,
    source: 'common practice, no source',
    accepted: null,
  };
}
