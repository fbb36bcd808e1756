import type { FigureUnit, Finding } from '../finding.ts';
import { say } from '../units/say.ts';
import type { Acceptance, LogRecord } from './record.ts';

/** An acceptance with the entry that holds it. */
type Dated = Acceptance & { readonly entry: string; readonly date: string; readonly chapter: string };

/** A typed figure stands for what is shown to a tenth, mm, or to half a percent of anything else. */
function slack(figure: number, unit: FigureUnit): number {
  return unit === 'mm' ? 0.06 : Math.abs(figure) * 0.005 + 1e-9;
}

/** The accepted figure in the unit of the finding: radians to degrees, ratio to percent, g to kg. */
function inUnit(one: Acceptance, unit: FigureUnit): number | null {
  if (one.figure === null) return null;
  if (unit === 'deg' && one.dimension === 'angle') return (one.figure * 180) / Math.PI;
  if (unit === '%' && one.dimension === 'grade') return one.figure * 100;
  if (unit === 'kg' && one.dimension === 'mass') return one.figure / 1000;
  return one.figure;
}

/**
 * Whether a finding's figure is worse than the one accepted. On the far side of its limit, farther is worse; without a limit any
 * difference is. An acceptance without a figure holds only for a finding without one.
 */
function worse(finding: Finding, accepted: Acceptance): boolean {
  const figure = inUnit(accepted, finding.unit);
  if (finding.figure === null) return false;
  if (figure === null) return true;
  const by = finding.figure - figure;
  const give = slack(figure, finding.unit);
  if (finding.limit === null) return Math.abs(by) > give;
  return finding.figure >= finding.limit ? by > give : by < -give;
}

function dated(records: readonly LogRecord[]): Dated[] {
  return records.flatMap((record) =>
    record.accepted.map((one) => ({ ...one, entry: record.id, date: record.date, chapter: record.chapter })),
  );
}

function matches(one: Acceptance, finding: Finding): boolean {
  return one.finding === finding.rule && one.where === finding.where;
}

/**
 * Findings with the reasons their author gave for living with them. The latest acceptance of a finding counts; a halt cannot be
 * accepted and a worse figure opens the finding again, each said in a note; so is an acceptance that meets no finding.
 */
export function acceptFindings(findings: readonly Finding[], records: readonly LogRecord[]) {
  const all = dated(records);
  const notes: Finding[] = [];
  const answered = findings.map((finding): Finding => {
    const one = all.findLast((candidate) => matches(candidate, finding));
    if (one === undefined) return finding;
    if (finding.level === 'halt')
      notes.push(note(one, 'accept-halt', `a halt cannot be accepted: ${finding.rule} at ${finding.where} stays open`));
    else if (worse(finding, one))
      notes.push(
        note(
          one,
          'accept-worse',
          `${finding.rule} at ${finding.where} is open again: its figure is worse than the one accepted on ${one.date}`,
        ),
      );
    else return { ...finding, accepted: one.because };
    return finding;
  });
  const idle = all.filter((one) => !findings.some((finding) => matches(one, finding)));
  notes.push(
    ...idle.map((one) =>
      note(
        one,
        'accept-idle',
        `no finding ${one.finding} at ${one.where} is open; the acceptance of ${one.date} is kept`,
      ),
    ),
  );
  return { findings: answered, notes };
}

function note(one: Dated, rule: string, words: string): Finding {
  return {
    rule,
    level: 'note',
    where: one.entry,
    chapter: one.chapter,
    what: say`${words}.`,
    figure: null,
    limit: null,
    unit: 'count',
    mend:
      rule === 'accept-idle'
        ? say`Nothing to do.`
        : say`Mend it as the finding says, or accept the new figure if it is no halt.`,
    source: 'this notebook',
    accepted: null,
  };
}
