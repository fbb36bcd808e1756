import type { FixLine } from '../core/log/fixes.ts';
import type { Hours } from '../core/log/hours.ts';
import type { LeftToMake } from '../core/log/left.ts';
import type { Spending } from '../core/log/spending.ts';
import type { LogState } from '../core/log/state.ts';
import { type Json, plain, thousandth } from './rounded.ts';

function numberOrNull(value: number | null): number | null {
  return value === null ? null : thousandth(value);
}

function leftJson({ part, label, stock, length, width, thickness, grain, quantity, instances }: LeftToMake): Json {
  return {
    ...{ part, label, stock, quantity },
    length: thousandth(length),
    width: thousandth(width),
    thickness: thousandth(thickness),
    ...{ grain, instances },
  };
}

function hoursJson({ minutes, hand, chapters, untimed, estimate, forecast }: Hours): Json {
  return {
    minutes: thousandth(minutes),
    hand: thousandth(hand),
    chapters: plain(chapters, ['minutes', 'hand']),
    untimed,
    estimate: plain(estimate, ['all', 'done', 'left', 'withoutTime', 'unknown']),
    forecast: numberOrNull(forecast),
  };
}

function moneyJson({ spent, chapters, budget, left, forecast }: Spending): Json {
  const leading = ['value', 'currency'];
  return {
    spent: plain(spent, leading),
    chapters: plain(chapters, leading),
    budget: plain(budget, leading),
    left: plain(left, leading),
    forecast: plain(forecast, leading),
  };
}

/** Where the work stands, as plain data. Minutes, mm, money in its own currency. */
export function stateJson(state: LogState): Json {
  return {
    parts: state.parts.map(({ id, instance, label, state: now, made, placed }) => {
      return { id, instance, label, state: now, made, placed };
    }),
    steps: state.steps.map(({ id, state: now, date, waitsFor, missing }) => ({
      id,
      state: now,
      date,
      waitsFor,
      missing,
    })),
    next: plain(state.next, ['workshop', 'room', 'outdoors']),
    leftToMake: state.leftToMake.map(leftJson),
    hours: hoursJson(state.hours),
    money: moneyJson(state.money),
    hidden: state.hidden.map(({ id, access, photo, test, closed, closedBy, missing }) => {
      return { id, access, photo, test, closed, closedBy, missing };
    }),
  };
}

/** The register of fixes, oldest first; `at` in mm from the end that `from` names. */
export function fixesJson(fixes: readonly FixLine[]): Json {
  return fixes.map(({ part, at, from, what, cause, mend, leaves, date, entry, stands }) => {
    return { part, at: numberOrNull(at), from, what, cause, mend, leaves, date, entry, stands };
  });
}
