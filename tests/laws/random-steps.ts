import fc from 'fast-check';
import type { WrittenStep } from '../../src/core/steps/schema.ts';

/** Written steps of two chapters. */
export type Chapters = { readonly benchwork: readonly WrittenStep[]; readonly wiring: readonly WrittenStep[] };

const NOUNS = [
  'side',
  'end',
  'strut',
  'deck',
  'flange-strip',
  'strut.along-1',
  'rabbet',
  'dado',
  'lap',
  'mark',
  'crosscut',
];
const GENERATED = ['rip', 'crosscut', 'rout', 'slots', 'table-glue', 'table-deck'];

/** Steps an author might write: some take over generated work, some wait for others; now and then two wait for each other. */
export const randomSteps: fc.Arbitrary<Chapters> = fc
  .record({
    count: fc.integer({ min: 0, max: 12 }),
    makes: fc.array(fc.option(fc.constantFrom(...NOUNS), { nil: null }), { minLength: 12, maxLength: 12 }),
    waits: fc.array(fc.array(fc.nat(11), { maxLength: 3 }), { minLength: 12, maxLength: 12 }),
    generated: fc.array(fc.option(fc.constantFrom(...GENERATED), { nil: null, freq: 4 }), {
      minLength: 12,
      maxLength: 12,
    }),
    chapters: fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }),
    ring: fc.integer({ min: 0, max: 9 }),
    shuffle: fc.array(fc.nat(1000), { minLength: 12, maxLength: 12 }),
  })
  .map((raw) => {
    const full = (i: number) => `${raw.chapters[i] ? 'benchwork' : 'wiring'}.s-${i}`;
    const all = Array.from({ length: raw.count }, (_, i) => {
      const earlier = (raw.waits[i] ?? []).filter((j) => j < i).map(full);
      const ring = raw.ring === 0 && i === 0 && raw.count > 1 ? [full(raw.count - 1)] : [];
      const own = raw.chapters[i] ? (raw.generated[i] ?? null) : null;
      const made = raw.makes[i];
      const step: WrittenStep = {
        id: `s-${i}`,
        do: `Step ${i}`,
        after: [...earlier, ...ring, ...(own === null ? [] : [own])],
        ...(made == null ? {} : { makes: [made] }),
      };
      return { step, bench: raw.chapters[i] ?? false, key: raw.shuffle[i] ?? 0 };
    });
    const written = [...all].sort((a, b) => a.key - b.key);
    return {
      benchwork: written.filter((one) => one.bench).map((one) => one.step),
      wiring: written.filter((one) => !one.bench).map((one) => one.step),
    };
  });
