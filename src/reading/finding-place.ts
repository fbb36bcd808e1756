import type { Finding } from '../core/finding.ts';
import type { Plan } from '../core/plan.ts';
import type { Spot } from '../core/units/problem.ts';

/** A path of the plan with the words an author or a rule may call it by. */
type Named = { readonly path: string; readonly names: readonly string[] };

function under(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined;
}

/** What an `id` beneath a path says, else null. */
function idAt(plan: Plan, path: string): string | null {
  const id = [...path.split('.'), 'id'].reduce<unknown>(under, plan);
  return typeof id === 'string' ? id : null;
}

function namedPaths(plan: Plan): readonly Named[] {
  return Object.keys(plan.spots).map((path) => {
    const id = idAt(plan, path);
    const key = path.slice(path.lastIndexOf('.') + 1);
    return { path, names: id === null ? [key] : [id, key] };
  });
}

/** The word, without its number, and as the key of a list: 'shelf.back-2' is under `shelves`. */
function spellings(word: string): readonly string[] {
  const kind = word.replace(/-\d+$/, '');
  return [word, kind, `${kind}s`, `${kind.replace(/f$/, 'v')}es`];
}

/** The thing itself: by its id, else by its key, in its own chapter before the others. */
function exactly(paths: readonly Named[], { chapter, where }: Finding): string | null {
  const own = paths.filter(({ path }) => path.startsWith(`${chapter}.`));
  const byId = (list: readonly Named[]) => list.find(({ names }) => names.length > 1 && names[0] === where);
  const byKey = (list: readonly Named[]) => list.find(({ names }) => names.includes(where));
  return (byId(own) ?? byKey(own) ?? byId(paths) ?? byKey(paths))?.path ?? null;
}

/** Whether a path is a key of this one, or an entry of a list that is. */
function isRightUnder(root: string, path: string): boolean {
  return path.startsWith(`${root}.`) && /^[^.]+(\.\d+)?$/.test(path.slice(root.length + 1));
}

/** What the cover tells, also when it tells nothing of it yet. */
const ON_THE_COVER = ['notebook', 'tools', 'cutting', 'budget'];

/** Where a chapter speaks of things: parts of the frame are told by their bench. */
function rootsOf(paths: readonly Named[], { chapter, where }: Finding): readonly string[] {
  if (ON_THE_COVER.includes(where)) return ['notebook'];
  const benches = paths.map(({ path }) => path).filter((path) => /^benchwork\.benches\.\d+$/.test(path));
  return chapter === 'benchwork' && benches.length > 0 ? [...benches, 'benchwork.benches'] : [chapter];
}

/** What a bench or a chapter says of the thing: word by word down the keys, as far as they go. */
function downTo(paths: readonly Named[], finding: Finding): string {
  const found = finding.where.split('.').reduce(
    (roots: readonly string[], word) => {
      const wanted = spellings(word);
      const next = paths.find(({ path, names }) => {
        if (/\.steps\b/.test(path)) return false;
        return roots.some((root) => isRightUnder(root, path)) && names.some((name) => wanted.includes(name));
      });
      return next === undefined ? roots : [next.path];
    },
    rootsOf(paths, finding),
  );
  return found[0] ?? finding.chapter;
}

/** A step, which findings name by its chapter and its id. */
function stepOf(paths: readonly Named[], { chapter, where }: Finding): string | null {
  const steps = paths.filter(({ path }) => path.startsWith(`${chapter}.steps.`));
  return steps.find(({ names }) => names.length > 1 && `${chapter}.${names[0]}` === where)?.path ?? null;
}

/** Tells the place in a plan's files that a finding is about: the thing it names, else what holds it, else its chapter. */
export function findingPlaces(plan: Plan): (finding: Finding) => Spot {
  const paths = namedPaths(plan);
  return (finding) => {
    const named = finding.where.includes('.') ? stepOf(paths, finding) : exactly(paths, finding);
    const path = named ?? downTo(paths, finding);
    return plan.spots[path] ?? { file: `notebooks/${plan.slug}/notebook.md`, line: 1, column: 1, path: '' };
  };
}
