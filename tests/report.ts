import { stripVTControlCharacters } from 'node:util';

/** One check as the report counts it: a test, or types and lint as a whole. */
export type Outcome = {
  readonly group: string;
  readonly name: string;
  readonly passed: boolean;
  /** why it failed, as its tool said it */
  readonly said: string;
};

type Assertion = { readonly fullName?: string; readonly status?: string; readonly failureMessages?: readonly string[] };
type Suite = {
  readonly name?: string;
  readonly status?: string;
  readonly message?: string;
  readonly assertionResults?: readonly Assertion[];
};
export type VitestReport = { readonly success?: boolean; readonly testResults?: readonly Suite[] };

/** `tests/laws/kerf.test.ts` belongs to laws. */
function groupOf(file: string): string {
  return /(?:^|\/)tests\/([^/]+)\//.exec(file.replaceAll('\\', '/'))?.[1] ?? 'tests';
}

function suiteOutcomes(suite: Suite): Outcome[] {
  const file = (suite.name ?? '').replaceAll('\\', '/').replace(/^.*\/(?=tests\/)/, '');
  const group = groupOf(file);
  const ran = (suite.assertionResults ?? []).filter(({ status }) => status === 'passed' || status === 'failed');
  const outcomes = ran.map(({ fullName = '', status, failureMessages = [] }) => {
    return { group, name: `${file} > ${fullName}`, passed: status === 'passed', said: failureMessages.join('\n') };
  });
  const told = outcomes.some(({ passed }) => !passed);
  if (suite.status !== 'failed' || told) return outcomes;
  return [...outcomes, { group, name: `${file} could not be run`, passed: false, said: suite.message ?? '' }];
}

/** Tests that were not run; they count as neither passed nor failed and are told. */
export function skippedIn(report: VitestReport): number {
  const all = (report.testResults ?? []).flatMap(({ assertionResults = [] }) => assertionResults);
  return all.filter(({ status }) => status !== 'passed' && status !== 'failed').length;
}

/** Every test of a vitest report; a file that could not be run, and a run that failed without saying where, fail too. */
export function outcomesOf(report: VitestReport | null, said: string): Outcome[] {
  const missing = (name: string): Outcome => ({ group: 'tests', name, passed: false, said });
  if (report === null) return [missing('the tests could not be run')];
  const outcomes = (report.testResults ?? []).flatMap(suiteOutcomes);
  if (outcomes.length === 0) return [missing('no test was run')];
  const untold = report.success !== true && outcomes.every(({ passed }) => passed);
  return untold ? [...outcomes, missing('the run failed outside its tests')] : outcomes;
}

/** Colours, and the part of a stack that is not ours, tell nothing. */
function indented(text: string): string {
  const lines = stripVTControlCharacters(text.trimEnd())
    .split('\n')
    .filter((line) => !/^\s+at .*(node_modules|node:|<anonymous>|new Promise)/.test(line));
  const more = lines.length > 40 ? [`... ${lines.length - 40} more lines`] : [];
  return [...lines.slice(0, 40), ...more].map((line) => `    ${line}`).join('\n');
}

/** Failures first, then a line a group; the last line is `N passed, N failed`. */
export function reportText(outcomes: readonly Outcome[], skipped: number): string {
  const failed = outcomes.filter(({ passed }) => !passed);
  const groups = [...new Set(outcomes.map(({ group }) => group))];
  const rows = groups.map((group) => {
    const own = outcomes.filter((outcome) => outcome.group === group);
    const bad = own.filter(({ passed }) => !passed).length;
    return `${group.padEnd(12)}${String(own.length - bad).padStart(6)} passed${bad > 0 ? `, ${bad} failed` : ''}`;
  });
  const blocks = failed.map(({ name, said }) => `FAILED ${name}\n${indented(said)}\n`);
  const left = skipped > 0 ? [`${skipped} not run`] : [];
  return [...blocks, ...rows, ...left, `${outcomes.length - failed.length} passed, ${failed.length} failed`].join('\n');
}
