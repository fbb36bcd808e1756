import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { historyOf } from '../../src/core/log/history.ts';
import { instanceStates } from '../../src/core/log/part-state.ts';
import type { LogRecord } from '../../src/core/log/record.ts';
import { type LogState, logState } from '../../src/core/log/state.ts';
import { applied, entry, values } from '../core/log/entries.ts';
import { MODEL, planned } from '../core/steps/demo.ts';
import { randomChain, randomLog } from './random-log.ts';

const RUNS = 1000;
const SEED = 20261125;
const steps = planned([]).steps;

function stateOf(records: readonly LogRecord[]): LogState {
  return logState({
    records,
    parts: MODEL.parts,
    steps,
    benches: MODEL.benches,
    measurable: [],
    budget: { value: 500, currency: 'EUR' },
    toBuy: null,
    today: null,
  });
}

type Sample = { readonly records: readonly LogRecord[]; readonly state: LogState };
type Law = (sample: Sample) => readonly string[];

const samples: readonly Sample[] = fc
  .sample(randomLog, { numRuns: RUNS, seed: SEED })
  .map((records) => ({ records, state: stateOf(records) }));

/** Sound pieces of one instance, told by counting: made raises it, a loss lowers it to nothing below none. */
function sound(records: readonly LogRecord[], instance: string): number {
  return records.reduce((pieces, record) => {
    const losses = record.fixes.filter((fix) => fix.part === instance && fix.leaves === 'nothing').length;
    const made = record.made.filter((id) => id === instance).length;
    return Math.max(0, pieces - losses) + made;
  }, 0);
}

const madeAndLeftAreAsked: Law = ({ records, state }) =>
  MODEL.parts.flatMap((part) => {
    const count = state.counts.find((one) => one.id === part.id);
    const made = part.places.filter((place) => sound(records, place.id) > 0).length;
    const left = state.leftToMake.filter((one) => one.part === part.id).reduce((sum, one) => sum + one.quantity, 0);
    const right = count?.made === made && count.left === left && made + left === part.places.length;
    return right ? [] : [`${part.id}: ${count?.made} made, ${left} left of ${part.places.length}`];
  });

const hoursAddUp: Law = ({ records, state }) => {
  const minutes = records.reduce((sum, record) => sum + (record.minutes ?? 0), 0);
  const chapters = Object.values(state.hours.chapters).reduce((sum, time) => sum + time.minutes, 0);
  const hand = records.reduce((sum, record) => sum + (record.minutes ?? 0) * (record.people ?? 1), 0);
  return state.hours.minutes === minutes && chapters === minutes && state.hours.hand === hand ? [] : ['hours'];
};

const moneyAddsUp: Law = ({ records, state }) =>
  ['EUR', 'USD'].flatMap((currency) => {
    const cents = records
      .flatMap((record) => (record.spent?.currency === currency ? [Math.round(record.spent.value * 100)] : []))
      .reduce((sum, value) => sum + value, 0);
    const told = state.money.spent.find((one) => one.currency === currency)?.value ?? 0;
    const chapters = Object.values(state.money.chapters)
      .flatMap((list) => list.filter((one) => one.currency === currency))
      .reduce((sum, one) => sum + Math.round(one.value * 100), 0);
    return told === cents / 100 && chapters === cents ? [] : [`${currency}: ${told} for ${cents} cents`];
  });

/** The same entries in any order of files give the same bytes. */
const orderOf =
  (make: (records: readonly LogRecord[]) => unknown): Law =>
  ({ records }) => {
    const one = JSON.stringify(make(records));
    const other = JSON.stringify(make([...records].reverse()));
    return one === other ? [] : ['another order, another state'];
  };

/** Nothing the log tells is dropped: every event stands in the history of a part or of one that is gone. */
const nothingIsLost: Law = ({ records, state }) => {
  const told = records.reduce((sum, { made, apart, fixes }) => sum + made.length + apart.length + fixes.length, 0);
  const histories = [...state.parts.map((part) => part.history), ...Object.values(state.gone)];
  const kept = histories.flat().filter((event) => event.kind !== 'placed').length;
  return told === kept ? [] : [`${kept} of ${told} events`];
};

const placedIsMade: Law = ({ state }) =>
  state.parts.filter((part) => part.placed && !part.made).map((part) => part.instance);

function breaches(law: Law, list: readonly Sample[]): readonly string[] {
  return list.flatMap(law);
}

function tampered(change: (state: LogState) => LogState): readonly Sample[] {
  return samples.map(({ records, state }) => ({ records, state: change(state) }));
}

describe('a log', () => {
  it('comes from a generator that gives mostly logs without faults', () => {
    const valid = samples.filter(({ state }) => state.faults.length === 0).length;
    console.log(`logs without faults: ${valid} of ${RUNS}`);
    expect(valid / RUNS).toBeGreaterThanOrEqual(0.7);
    expect(samples.some(({ state }) => state.findings.some((finding) => finding.rule === 'made-twice'))).toBe(true);
  });

  it('leaves of every part what is asked and not made', () =>
    expect(breaches(madeAndLeftAreAsked, samples)).toEqual([]));
  it('adds up its hours', () => expect(breaches(hoursAddUp, samples)).toEqual([]));
  it('adds up its money', () => expect(breaches(moneyAddsUp, samples)).toEqual([]));
  it('says the same whatever the order of its files', () => expect(breaches(orderOf(stateOf), samples)).toEqual([]));
  it('keeps all it was told', () => expect(breaches(nothingIsLost, samples)).toEqual([]));
  it('puts nothing in place that is not made', () => expect(breaches(placedIsMade, samples)).toEqual([]));
});

describe('a planted fault is caught', () => {
  it('a part forgotten on the list of what is left', () => {
    expect(
      breaches(
        madeAndLeftAreAsked,
        tampered((state) => ({ ...state, leftToMake: state.leftToMake.slice(1) })),
      ).length,
    ).toBeGreaterThan(0);
  });
  it('a second piece counted as the part of another place', () => {
    const counts = (state: LogState) => state.counts.map((one) => ({ ...one, made: one.made + one.spare }));
    expect(
      breaches(
        madeAndLeftAreAsked,
        tampered((state) => ({ ...state, counts: counts(state) })),
      ).length,
    ).toBeGreaterThan(0);
  });
  it('hours without hands, money that drifts', () => {
    const lonely = tampered((state) => ({ ...state, hours: { ...state.hours, hand: state.hours.minutes } }));
    expect(breaches(hoursAddUp, lonely).length).toBeGreaterThan(0);
    const drifted = tampered((state) => ({
      ...state,
      money: { ...state.money, spent: state.money.spent.map((one) => ({ ...one, value: one.value + 1e-9 })) },
    }));
    expect(breaches(moneyAddsUp, drifted).length).toBeGreaterThan(0);
  });
  it('states read in the order of the files', () => {
    const unsorted = (records: readonly LogRecord[]) =>
      instanceStates(MODEL.parts, historyOf(records, steps)).map((part) => part.state);
    expect(breaches(orderOf(unsorted), samples).length).toBeGreaterThan(0);
  });
  it('the story of a part that is gone thrown away', () => {
    expect(
      breaches(
        nothingIsLost,
        tampered((state) => ({ ...state, gone: {} })),
      ).length,
    ).toBeGreaterThan(0);
  });
  it('a part in place that was never made', () => {
    const careless = tampered((state) => ({ ...state, parts: state.parts.map((part) => ({ ...part, placed: true })) }));
    expect(breaches(placedIsMade, careless).length).toBeGreaterThan(0);
  });
});

describe('a chain of changes', () => {
  const chains = fc.sample(randomChain, { numRuns: RUNS, seed: SEED });
  const log = (chain: (typeof chains)[number]) =>
    chain.map(([was, to], i) =>
      entry(`2026-01-${10 + i}-x`, { change: [{ set: 'dimensions.width', was: `${was} mm`, to: `${to} mm` }] }),
    );
  const faultsOf = (chain: (typeof chains)[number], now: number) =>
    applied(log(chain), { values: values({ width: `${now} mm` }) }).faults;
  const last = (chain: (typeof chains)[number]) => chain.at(-1)?.[1] ?? 0;

  it('without a break has no fault', () => {
    expect(chains.flatMap((chain) => faultsOf(chain, last(chain)))).toEqual([]);
  });

  it('with a planted break is told, wherever it is', () => {
    for (const [n, chain] of chains.entries()) {
      const at = n % chain.length;
      const broken = chain.map(([was, to], i) => (i === at ? ([was + 1, to] as const) : ([was, to] as const)));
      const rules = faultsOf(broken, last(chain)).map((fault) => fault.rule);
      expect(rules).toEqual(at === 0 ? [] : ['change-chain']);
      expect(faultsOf(chain, last(chain) + 1).map((fault) => fault.rule)).toEqual(['change-end']);
    }
  });
});
