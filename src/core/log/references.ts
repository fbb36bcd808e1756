import type { Finding } from '../finding.ts';
import type { Fault } from '../units/problem.ts';
import { type Sentence, say } from '../units/say.ts';
import { groupNames } from './groups.ts';
import { alikeNames, slipsOf } from './names.ts';
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
  /** `piece`: one piece alone; `part`: a piece or a group of them */
  readonly kind: 'step' | 'part' | 'piece' | 'figure';
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
      'piece',
    ),
    ...within(
      record.measured.map((one) => one.what),
      ['measured', 'what'],
      'figure',
    ),
  ];
}

const WORDS = { step: 'step', part: 'part', piece: 'part', figure: 'part or figure' } as const;

type Lists = Readonly<Record<Use['kind'], readonly string[]>>;

function listsOf({ steps, instances, measurable }: Known): Lists {
  return {
    step: steps,
    part: [...instances, ...groupNames(instances)],
    piece: instances,
    figure: [...measurable, ...instances],
  };
}

/**
 * Names the notebook does not know: a slip of the pen is a fault with the name that was meant; any other is kept as a note, for
 * it may be a part or step that the plan had when the entry was written.
 */
export function unknownNames(records: readonly LogRecord[], known: Known) {
  const lists = listsOf(known);
  const groups = new Set(groupNames(known.instances));
  const sets = new Map(Object.entries(lists).map(([kind, names]) => [kind, new Set(names)]));
  const strange = records.flatMap(uses).filter((use) => sets.get(use.kind)?.has(use.name) !== true);
  const slips = (kind: Use['kind']) => {
    const names = strange.filter((use) => use.kind === kind).map((use) => use.name);
    return slipsOf(names, lists[kind]);
  };
  const meant = { step: slips('step'), part: slips('part'), piece: slips('piece'), figure: slips('figure') };
  const faults: Fault[] = [];
  const findings: Finding[] = [];
  for (const use of strange) {
    const name = meant[use.kind].get(use.name) ?? null;
    if (use.kind === 'piece' && groups.has(use.name)) faults.push(groupFault(use, known.instances));
    else if (name === null) findings.push(goneFinding(use, lists[use.kind]));
    else faults.push(slipFault(use, name));
  }
  return { faults, findings };
}

/** A mend is of one piece; of a drawer or a leg it has to be said which. */
function groupFault({ name, at }: Use, instances: readonly string[]): Fault {
  const pieces = instances.filter((id) => id.startsWith(`${name}.`));
  return {
    rule: 'log-name',
    at,
    what: `'${name}' is ${pieces.length === 1 ? 'a group of one piece' : `${pieces.length} pieces`}`,
    mend: `name the one that was mended: ${pieces.join(', ')}`,
  };
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

function goneFinding({ name, kind, record }: Use, names: readonly string[]): Finding {
  return {
    rule: kind === 'step' ? 'step-gone' : 'part-gone',
    level: 'note',
    where: name,
    chapter: record.chapter,
    what: say`The entry of ${record.date} tells of ${name}, which the plan does not have now. The entry is kept.`,
    figure: null,
    limit: null,
    unit: 'count',
    mend: [...goneMend(kind), ...alikeWords(alikeNames(name, names))],
    source: 'this notebook',
    accepted: null,
  };
}

function goneMend(kind: Use['kind']): Sentence {
  if (kind === 'step') return say`Nothing, if the step was taken out; else write its name as the steps have it.`;
  return say`Nothing, if the part was taken out; if it has another name now, write 'renamed' in an entry; log the change that took it out.`;
}

function alikeWords(alike: readonly string[]): Sentence {
  return alike.length === 0 ? [] : say` There are ${alike.join(', ')}.`;
}
