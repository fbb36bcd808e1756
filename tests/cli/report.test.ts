import { expect, test } from 'vitest';
import { outcomesOf, reportText, skippedIn, type VitestReport } from '../report.ts';

const good = { fullName: 'adds up', status: 'passed' };
const bad = { fullName: 'closes', status: 'failed', failureMessages: ['expected 1 to be 2'] };
const suite = (...assertionResults: object[]) => ({
  name: '/x/tests/laws/sums.test.ts',
  status: 'passed',
  assertionResults,
});

function last(report: VitestReport | null): string {
  return reportText(outcomesOf(report, 'as it was said'), 0).split('\n').at(-1) ?? '';
}

test('passed and failed tests are counted, and the last line says so', () => {
  expect(last({ success: true, testResults: [suite(good, good)] })).toBe('2 passed, 0 failed');
  expect(last({ success: false, testResults: [{ ...suite(good, bad), status: 'failed' }] })).toBe('1 passed, 1 failed');
});

test('a run without tests has failed', () => {
  expect(last({ success: true, testResults: [] })).toBe('0 passed, 1 failed');
  expect(last(null)).toBe('0 passed, 1 failed');
});

test('a file that could not be loaded has failed, and its reason is shown', () => {
  const report = {
    success: false,
    testResults: [suite(good), { ...suite(), status: 'failed', message: 'no such module' }],
  };
  expect(last(report)).toBe('1 passed, 1 failed');
  expect(reportText(outcomesOf(report, ''), 0)).toContain(
    'FAILED tests/laws/sums.test.ts could not be run\n    no such module',
  );
});

test('an error outside all tests has failed', () => {
  const text = reportText(outcomesOf({ success: false, testResults: [suite(good)] }, 'unhandled rejection'), 0);
  expect(text).toContain('FAILED the run failed outside its tests\n    unhandled rejection');
  expect(text).toMatch(/\n1 passed, 1 failed$/);
});

test('tests that were left out are told and are not counted as passed', () => {
  const report = { success: true, testResults: [suite(good, { fullName: 'later', status: 'skipped' })] };
  expect(skippedIn(report)).toBe(1);
  expect(reportText(outcomesOf(report, ''), skippedIn(report))).toMatch(/1 not run\n1 passed, 0 failed$/);
});

test('a failure is shown with its file, its name and why, and each group has a line', () => {
  const text = reportText(
    outcomesOf({ success: false, testResults: [{ ...suite(good, bad), status: 'failed' }] }, ''),
    0,
  );
  expect(text).toContain('FAILED tests/laws/sums.test.ts > closes\n    expected 1 to be 2');
  expect(text).toMatch(/^laws +1 passed, 1 failed$/m);
});

test('colours and the stack inside tools are left out', () => {
  const said =
    '\u001b[31mexpected 1\u001b[0m\n    at sums (tests/laws/sums.test.ts:3:4)\n    at run (/x/node_modules/vitest/a.js:1:2)';
  const text = reportText([{ group: 'laws', name: 'sums', passed: false, said }], 0);
  expect(text).toContain('FAILED sums\n    expected 1\n        at sums (tests/laws/sums.test.ts:3:4)\n\nlaws');
});
