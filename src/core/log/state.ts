import type { Finding } from '../finding.ts';
import type { Step } from '../steps/step.ts';
import type { Part } from '../stock/part.ts';
import type { Fault } from '../units/problem.ts';
import { doneNotMade, fromTheFuture, neverMade, outOfOrder, sparePieces, upkeepFindings } from './doubts.ts';
import { type FixLine, fixRegister } from './fixes.ts';
import { byPiece } from './groups.ts';
import { closedEarly, closingFindings, type HiddenState, hiddenSpaces } from './hidden.ts';
import { historyOf, type PartEvent } from './history.ts';
import { type Hours, hoursOf } from './hours.ts';
import { type LeftToMake, leftToMake } from './left.ts';
import { contradictions } from './measurement.ts';
import { type InstanceState, instanceStates, type PartCount, partCounts } from './part-state.ts';
import type { Decision, LogRecord, Money } from './record.ts';
import { inLogOrder } from './records.ts';
import { unknownNames } from './references.ts';
import { expectedSizes, measuredResults, type Outside, type ResultRow, resultFindings } from './result.ts';
import { type Spending, spendingFindings, spendingOf } from './spending.ts';
import {
  doneSteps,
  type Next,
  nextSteps,
  type Progress,
  progressOf,
  type StepState,
  stepStates,
} from './step-state.ts';
import { type UpkeepLine, upkeepOf } from './upkeep.ts';

export type LogStateInput = {
  readonly records: readonly LogRecord[];
  readonly parts: readonly Part[];
  readonly steps: readonly Step[];
  readonly benches: readonly Outside[];
  /** names of measured inputs: `frame.thickness` */
  readonly measurable: readonly string[];
  readonly budget: Money | null;
  /** what the shopping list still asks for, if known */
  readonly toBuy: Money | null;
  /** ISO date from a command; null in build and compute */
  readonly today: string | null;
};

/** Where the work stands. */
export type LogState = {
  readonly parts: readonly InstanceState[];
  readonly counts: readonly PartCount[];
  readonly steps: readonly StepState[];
  readonly progress: Progress;
  readonly next: Next;
  readonly hours: Hours;
  readonly money: Spending;
  readonly leftToMake: readonly LeftToMake[];
  readonly fixes: readonly FixLine[];
  readonly hidden: readonly HiddenState[];
  readonly decisions: readonly (Decision & {
    readonly date: string;
    readonly entry: string;
    readonly chapter: string;
  })[];
  readonly upkeep: readonly UpkeepLine[];
  readonly results: readonly ResultRow[];
  /** running sessions: how often trains came off of how many passes */
  readonly sessions: readonly {
    readonly entry: string;
    readonly date: string;
    readonly off: number;
    readonly of: number;
  }[];
  /** histories of what the plan has no more, by the name the log uses */
  readonly gone: Readonly<Record<string, readonly PartEvent[]>>;
  readonly faults: readonly Fault[];
  readonly findings: readonly Finding[];
};

/** The state of every part and step, and what follows from the log; the order of the records does not matter. */
export function logState(input: LogStateInput): LogState {
  const { parts, steps, benches } = input;
  const asWritten = inLogOrder(input.records);
  const records = byPiece(asWritten, parts);
  const history = historyOf(records, steps);
  const states = instanceStates(parts, history);
  const instances = new Set(states.map((state) => state.instance));
  const done = doneSteps(records);
  const stepList = stepStates(steps, done, new Set(states.filter((one) => !one.made).map((one) => one.instance)));
  const plain = {
    parts: states,
    counts: partCounts(parts, states),
    steps: stepList,
    progress: progressOf(stepList),
    next: nextSteps(steps, stepList),
    hours: hoursOf(records, steps, new Set(done.keys())),
    money: spendingOf(records, input.budget, input.toBuy),
    leftToMake: leftToMake(parts, states),
    fixes: fixRegister(records, instances),
    hidden: hiddenSpaces(records, steps, stepList),
    decisions: records.flatMap((record) =>
      record.decided.map((one) => ({ ...one, ...told(record), chapter: record.chapter })),
    ),
    upkeep: upkeepOf(records, input.today),
    results: measuredResults(records, expectedSizes(parts, benches)),
    sessions: sessionsOf(records),
    gone: Object.fromEntries([...history].filter(([id]) => !instances.has(id) && isPart(id, input))),
  };
  return { ...plain, ...judged({ records, asWritten }, input, plain) };
}

function told(record: LogRecord) {
  return { date: record.date, entry: record.id };
}

/** Measured inputs and benches have a history of readings, but are no parts. */
function isPart(id: string, { measurable, benches }: LogStateInput): boolean {
  return (
    !measurable.some((name) => name === id || name.startsWith(`${id}.`)) && !benches.some((bench) => bench.id === id)
  );
}

function sessionsOf(records: readonly LogRecord[]): LogState['sessions'] {
  return records
    .filter((record) => record.trials.length > 0)
    .map((record) => ({
      ...told(record),
      off: record.trials.reduce((sum, trial) => sum + trial.off, 0),
      of: record.trials.reduce((sum, trial) => sum + trial.of, 0),
    }));
}

type Plain = Omit<LogState, 'faults' | 'findings'>;

type Told = { readonly records: readonly LogRecord[]; readonly asWritten: readonly LogRecord[] };

function judged(
  { records, asWritten }: Told,
  input: LogStateInput,
  plain: Plain,
): Pick<LogState, 'faults' | 'findings'> {
  const { parts, steps, benches } = input;
  const results = Object.keys(expectedSizes(parts, benches));
  const names = unknownNames(asWritten, {
    steps: steps.map((step) => step.id),
    instances: plain.parts.map((part) => part.instance),
    measurable: [...input.measurable, ...results],
  });
  const findings = [
    ...names.findings,
    ...contradictions(records, new Set(results.filter((name) => !name.endsWith('.diagonals')))),
    ...resultFindings(records, parts, benches),
    ...sparePieces(plain.counts),
    ...neverMade(plain.parts),
    ...doneNotMade(steps, plain.steps, plain.parts),
    ...outOfOrder(steps, plain.steps),
    ...closingFindings(plain.hidden, plain.steps),
    ...closedEarly(plain.hidden, steps, plain.parts),
    ...spendingFindings(plain.money),
    ...fromTheFuture(records, input.today),
    ...upkeepFindings(plain.upkeep),
  ];
  return { faults: names.faults, findings };
}
