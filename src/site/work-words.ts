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
      `${duration(estimate.left)}, with ${counted(estimate.withoutTime, 'step')} not estimated`,
    ],
    [
      'In the end, at this pace',
      forecast === null ? 'not known: no step with an estimate is done' : `about ${duration(forecast)}`,
    ],
    ...(untimed > 0 ? [['Without a time', counted(untimed, 'entry', 'entries')] as const] : []),
  ];
}

/** The log's money with what the rest still asks for. */
function spending(book: Book): Spending {
  const { log, state } = book.notebook;
  return spendingOf(log, state.money.budget, book.left?.toBuy ?? null);
}

function listedMoney(money: readonly Money[]): string {
  return money.length === 0 ? 'nothing' : money.map(moneyWords).join(', ');
}

/** Money spent against the budget, with what the sheets still to buy would make of it. */
export function moneyRows(book: Book): readonly Row[] {
  const { budget, chapters, forecast, left, spent } = spending(book);
  const toBuy = book.left?.toBuy ?? null;
  return [
    ['Spent', listedMoney(spent)],
    ...Object.entries(chapters).flatMap(([name, money]): Row[] =>
      money.length === 0 ? [] : [[`of it ${name}`, listedMoney(money)]],
    ),
    ['Budget', budget === null ? 'none is set' : moneyWords(budget)],
    ...(left === null ? [] : [['Left of it', moneyWords(left)] as const]),
    ['Sheets still to buy', toBuy === null ? 'none, or their price is not known' : moneyWords(toBuy)],
    ...(forecast === null ? [] : [['With those sheets', moneyWords(forecast)] as const]),
  ];
}
