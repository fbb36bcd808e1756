import type { Finding } from '../finding.ts';
import type { Fault } from '../units/problem.ts';
import { type Sentence, say } from '../units/say.ts';
import { slipsOf } from './names.ts';
import type { LogRecord } from './record.ts';
import { entryPath } from './records.ts';

/** Names an entry may use. */
export type Known = {
  readonly steps: readonly string[];
  readonly instances: readonly string[];
  /** inputs and results a reading may be of */
  readonly measurable: readonly string[];
};

type Use = {
  readonly name: string;
  readonly at: string;
  readonly kind: 'step' | 'part' | 'figure';
  readonly record: LogRecord;
};

function uses(record: LogRecord): Use[] {
  const path = entryPath(record.id);
  const list = (names: readonly string[], key: string, kind: Use['kind']) =>
    names.map((name, i): Use => ({ name, at: `${path}.${key}.${i}`, kind, record }));
  const within = (names: readonly string[], keys: readonly [string, string], kind: Use['kind']) =>
    names.map((name, i): Use => ({ name, at: `${path}.${keys[0]}.${i}.${keys[1]}`, kind, record }));
  return [
    ...list(record.done, 'done', 'step'),
    ...list(record.made, 'made', 'part'),
    ...list(record.placed, 'placed', 'part'),
    ...list(record.apart, 'apart', 'part'),
    ...within(
      record.fixes.map((fix) => fix.part),
      ['fix', 'part'],
      'part',
    ),
    ...within(
      record.measured.map((one) => one.what),
      ['measured', 'what'],
      'figure',
    ),
  ];
}

const WORDS = { step: 'step', part: 'part', figure: 'part or figure' } as const;

/**
 * Names the notebook does not know: a slip of the pen is a fault with the name that was meant; any other is kept as a note, for
 * it may be a part or step that the plan had when the entry was written.
 */
export function unknownNames(records: readonly LogRecord[], known: Known) {
  const lists = { step: known.steps, part: known.instances, figure: [...known.measurable, ...known.instances] };
  const sets = { step: new Set(lists.step), part: new Set(lists.part), figure: new Set(lists.figure) };
  const strange = records.flatMap(uses).filter((use) => !sets[use.kind].has(use.name));
  const slips = (kind: Use['kind']) => {
    const names = strange.filter((use) => use.kind === kind).map((use) => use.name);
    return slipsOf(names, lists[kind]);
  };
  const meant = { step: slips('step'), part: slips('part'), figure: slips('figure') };
  const faults: Fault[] = [];
  const findings: Finding[] = [];
  for (const use of strange) {
    const name = meant[use.kind].get(use.name) ?? null;
    if (name === null) findings.push(goneFinding(use));
    else faults.push(slipFault(use, name));
  }
  return { faults, findings };
}

function slipFault({ name, at, kind, record }: Use, meant: string): Fault {
  const prefix = `${record.chapter}.`;
  const short = (id: string) => (kind === 'step' && id.startsWith(prefix) ? id.slice(prefix.length) : id);
  return {
    rule: 'log-name',
    at,
    what: `'${short(name)}' is no ${WORDS[kind]} of this notebook`,
    mend: `did you mean '${short(meant)}'? If it was renamed, say so under renamed`,
  };
}

function goneFinding({ name, kind, record }: Use): Finding {
  return {
    rule: kind === 'step' ? 'step-gone' : 'part-gone',
    level: 'note',
    where: name,
    chapter: record.chapter,
    what: say`The entry of ${record.date} tells of ${name}, which the plan does not have now. The entry is kept.`,
    figure: null,
    limit: null,
    unit: 'count',
    mend: goneMend(kind),
    source: 'this notebook',
    accepted: null,
  };
}

function goneMend(kind: Use['kind']): Sentence {
  if (kind === 'step') return say`Nothing, if the step was taken out; else write its name as the steps have it.`;
  return say`Nothing, if the part was taken out; if it has another name now, write 'renamed' in an entry; log the change that took it out.`;
}
