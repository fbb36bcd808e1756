import type { Part } from '../stock/part.ts';
import { nearest } from '../units/nearest.ts';
import type { Fault } from '../units/problem.ts';
import type { Draft } from './generated/draft.ts';
import type { WrittenStep } from './schema.ts';

/** The steps of one chapter as its author wrote them. */
export type ChapterSteps = { readonly chapter: string; readonly steps: readonly WrittenStep[] };

/** A written step with its full id and its place in the chapter's list. */
export type Written = {
  readonly id: string;
  readonly chapter: string;
  readonly at: string;
  readonly step: WrittenStep;
};

/** What a written step makes: nouns as typed, the instances they stand for, and of these the ones named as parts or roles. */
export type Makes = {
  readonly nouns: readonly string[];
  readonly instances: readonly string[];
  readonly pieces: readonly string[];
};

/** Full ids for all written steps; the second of two with one name is a fault and left out. */
export function namedSteps(chapters: readonly ChapterSteps[]) {
  const faults: Fault[] = [];
  const steps = new Map<string, Written>();
  for (const { chapter, steps: list } of chapters) {
    list.forEach((step, i) => {
      const id = `${chapter}.${step.id}`;
      const at = `${chapter}.steps.${i}`;
      if (steps.has(id)) faults.push(twice(step.id, at));
      else steps.set(id, { id, chapter, at, step });
    });
  }
  return { written: [...steps.values()], faults };
}

function twice(id: string, at: string): Fault {
  return {
    rule: 'step-duplicate',
    at: `${at}.id`,
    what: `two steps of this chapter are called '${id}'`,
    mend: `give one of them another id, such as '${id}-2'`,
  };
}

/** What a name stands for; `named` says whether it names the pieces themselves and not the machining they get. */
export type Makeable = { readonly ids: readonly string[]; readonly named: 'pieces' | 'machining' };

/** Every name a step may make, with the instances it stands for: roles, part ids, instance ids, kinds of machining. */
export function makeable(parts: readonly Part[], drafts: readonly Draft[]): ReadonlyMap<string, Makeable> {
  const names = new Map<string, Makeable>();
  const add = (name: string, ids: readonly string[], named: Makeable['named']) =>
    names.set(name, { named, ids: [...new Set([...(names.get(name)?.ids ?? []), ...ids])] });
  for (const { kind, noun, makes } of drafts.flatMap((draft) => draft.work)) {
    if (kind === 'machining') add(noun, makes, 'machining');
  }
  for (const part of parts) {
    const ids = part.places.map((place) => place.id);
    for (const name of new Set([part.role, part.id])) add(name, ids, 'pieces');
    for (const id of ids) add(id, [id], 'pieces');
  }
  return names;
}

/** What a written step makes, and a fault for every name that is none of the plan's. */
export function resolvedMakes(written: Written, names: ReadonlyMap<string, Makeable>) {
  const faults: Fault[] = [];
  const nouns = written.step.makes ?? [];
  nouns.forEach((noun, i) => {
    if (!names.has(noun)) faults.push(madeOfNothing(noun, `${written.at}.makes.${i}`, [...names.keys()]));
  });
  const found = nouns.flatMap((noun) => names.get(noun) ?? []);
  const pieces = found.flatMap((one) => (one.named === 'pieces' ? one.ids : []));
  const instances = [...new Set(found.flatMap((one) => one.ids))];
  return { makes: { nouns, instances, pieces } satisfies Makes, faults };
}

/** The instances a written step puts in their places, and a fault for every name that is no piece of the plan. */
export function resolvedFits(written: Written, names: ReadonlyMap<string, Makeable>) {
  const faults: Fault[] = [];
  const known = [...names].flatMap(([name, { named }]) => (named === 'pieces' ? [name] : []));
  const fits = (written.step.fits ?? []).flatMap((name, i) => {
    const found = names.get(name);
    if (found?.named === 'pieces') return found.ids;
    faults.push(noPiece(name, `${written.at}.fits.${i}`, known));
    return [];
  });
  return { fits: [...new Set(fits)], faults };
}

function noPiece(name: string, at: string, known: readonly string[]): Fault {
  const near = nearest(name, known);
  const mend = near === null ? 'name a part, one of its pieces or a role' : `did you mean '${near}'?`;
  return { rule: 'step-fits', at, what: `'${name}' is no part or role of this notebook`, mend };
}

function madeOfNothing(noun: string, at: string, known: readonly string[]): Fault {
  const near = nearest(noun, known);
  const hint = near === null ? `name a part, a role or a kind of machining` : `did you mean '${near}'?`;
  return { rule: 'step-makes', at, what: `'${noun}' is no part, role or machining of this notebook`, mend: hint };
}

/** A step another waits for, by its full id; null with a fault when there is none. */
export function referredStep(name: string, written: Written, known: ReadonlySet<string>): string | null {
  if (known.has(name)) return name;
  const own = `${written.chapter}.${name}`;
  return known.has(own) ? own : null;
}

/** The fault for a name in `after` that no step has. */
export function noSuchStep(name: string, written: Written, place: { at: string; known: ReadonlySet<string> }): Fault {
  const prefix = `${written.chapter}.`;
  const short = [...place.known].map((id) => (id.startsWith(prefix) ? id.slice(prefix.length) : id));
  const near = nearest(name, short);
  const own = [...place.known].filter((id) => id.startsWith(prefix)).map((id) => id.slice(prefix.length));
  const mend = near === null ? `name one of ${listedSome(own)}` : `did you mean '${near}'?`;
  return { rule: 'step-unknown', at: place.at, what: `no step is called '${name}'`, mend };
}

/** Names told of a list before it is cut short. */
const TOLD = 16;

function listedSome(ids: readonly string[]): string {
  if (ids.length === 0) return "another chapter's steps, chapter first: benchwork.rip";
  const more = ids.length > TOLD ? ` and ${ids.length - TOLD} more` : '';
  return `${ids.slice(0, TOLD).join(', ')}${more}, or another chapter's step, chapter first: benchwork.rip`;
}
