import type { Money } from '../core/log/record.ts';
import { type Spending, spendingOf } from '../core/log/spending.ts';
import type { StepState } from '../core/log/step-state.ts';
import type { Step, Where } from '../core/steps/step.ts';
import { moneyWords } from './money.ts';
import type { Book } from './notebooks.ts';
import { counted, duration } from './words.ts';

export const PLACES: readonly (readonly [where: Where, title: string])[] = [
  ['workshop', 'In the workshop'],
  ['room', 'In the room'],
  ['outdoors', 'Outdoors'],
];

/** What can be started now at one place. */
export function nextAt(book: Book, where: Where): readonly Step[] {
  const ids = new Set(book.notebook.state.next[where]);
  return book.notebook.steps.filter(({ id }) => ids.has(id));
}

/** Steps that wait, each with what it waits for. */
export function waiting(book: Book): readonly { readonly step: Step; readonly state: StepState }[] {
  return book.notebook.state.steps.flatMap((state) => {
    const step = book.notebook.steps.find(({ id }) => id === state.id);
    return state.state === 'waiting' && step !== undefined ? [{ step, state }] : [];
  });
}

/** A row of figures: what it is, and its words. */
export type Row = readonly [name: string, words: string];

/** Time in the log against the steps' own estimates, with what the rest may take. */
export function hourRows(book: Book): readonly Row[] {
  const { chapters, estimate, forecast, hand, minutes, untimed } = book.notebook.state.hours;
  return [
    ['In the log', `${duration(minutes)}; counted by hands ${duration(hand)}`],
    ...Object.entries(chapters).map(([name, time]): Row => [`of it ${name}`, duration(time.minutes)]),
    ['Estimated for the steps done', duration(estimate.done)],
    [
      'Estimated for the rest',
      `${duration(estimate.left)}${estimate.unknown === 0 ? '' : `, and ${counted(estimate.unknown, 'step')} nobody has estimated`}`,
    ],
    ['In the end, at this pace', inTheEnd(forecast, estimate.unknown)],
    ...(untimed > 0 ? [['Without a time', counted(untimed, 'entry', 'entries')] as const] : []),
  ];
}

/** The forecast, which is a lower bound while steps that are left have no estimate. Minutes. */
function inTheEnd(forecast: number | null, unknown: number): string {
  if (forecast === null) return 'not known: no step with an estimate is done';
  if (unknown === 0) return `about ${duration(forecast)}`;
  return `over ${duration(forecast)}: ${counted(unknown, 'step')} without an estimate not counted`;
}

/** The log's money with what the rest still asks for. */
function spending(book: Book): Spending {
  const { log, state } = book.notebook;
  return spendingOf(log, state.money.budget, book.left?.toBuy ?? null);
}

function listedMoney(money: readonly Money[]): string {
  return money.length === 0 ? 'nothing' : money.map(moneyWords).join(', ');
}

/** What the sheets of what is left to make cost, or how many there are without a price. */
function sheetsToBuy({ left }: Book): string {
  const bought = left?.sheets.filter(({ piece }) => piece === undefined).length ?? 0;
  if (bought === 0) return 'none: what is left comes out of sheets begun and offcuts';
  const toBuy = left?.toBuy ?? null;
  return toBuy === null
    ? `${counted(bought, 'sheet')}, not all with a price`
    : `${counted(bought, 'sheet')}, ${moneyWords(toBuy)}`;
}

/** Money spent against the budget, with what the sheets still to buy would make of it. */
export function moneyRows(book: Book): readonly Row[] {
  const { budget, chapters, forecast, left, spent } = spending(book);
  return [
    ['Spent', listedMoney(spent)],
    ...Object.entries(chapters).flatMap(([name, money]): Row[] =>
      money.length === 0 ? [] : [[`of it ${name}`, listedMoney(money)]],
    ),
    ['Budget', budget === null ? 'none is set' : moneyWords(budget)],
    ...(left === null ? [] : [['Left of it', moneyWords(left)] as const]),
    ['Sheets still to buy', sheetsToBuy(book)],
    ...(forecast === null ? [] : [['With those sheets', moneyWords(forecast)] as const]),
  ];
}
