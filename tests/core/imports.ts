/** Source files by their path from the project's folder. */
export type Sources = Readonly<Record<string, string>>;

const nouns = ['core/units', 'core/geometry', 'core/stock', 'core/finding'];
const places = [...nouns, 'core/benchwork', 'core/track'];
const rooms = [
  ...places,
  ...['core/wiring', 'core/scenery', 'core/assembly', 'core/cutting', 'core/strength', 'core/moving'],
  ...['core/steps', 'core/shopping', 'core/log', 'core/head'],
];
const core = [...rooms, 'core/plan', 'core/stages', 'core/notebook', 'core/values'];
const ends = ['reading', 'writing', 'drawing', ...core];

/** Who may import whom; the table of the contributor's guide. */
export const table: Readonly<Record<string, readonly string[]>> = {
  'core/units': [],
  'core/finding': ['core/units'],
  'core/geometry': ['core/units'],
  'core/stock': ['core/units', 'core/geometry', 'core/finding'],
  'core/benchwork': nouns,
  'core/track': nouns,
  'core/wiring': places,
  'core/scenery': places,
  'core/assembly': nouns,
  'core/cutting': nouns,
  'core/strength': nouns,
  'core/moving': nouns,
  'core/steps': nouns,
  'core/shopping': nouns,
  'core/head': nouns,
  'core/log': rooms,
  'core/plan': rooms,
  'core/stages': [...rooms, 'core/plan'],
  'core/notebook': core,
  'core/values': [...nouns, 'core/notebook'],
  reading: core,
  writing: core,
  drawing: core,
  site: ends,
  cli: ends,
};

/** `src/core/units/say.ts` stands in core/units, `src/core/plan.ts` in core/plan, `src/site/pages/x.astro` in site. */
export function roomOf(file: string): string {
  const [, top = '', second = ''] = file.split('/');
  return top === 'core' ? `core/${second.replace(/(\.schema)?\.ts$/, '')}` : top;
}

const comment = /\/\*[\s\S]*?\*\/|(^|\s)\/\/[^\n]*/g;
const imports = /(?:\bfrom\s*|\bimport\s*\(\s*|\bimport\s+)(['"])([^'"\n]+)\1/g;

/** What a file imports, statically or not, types included. */
export function importsOf(text: string): string[] {
  return [...text.replace(comment, '$1').matchAll(imports)].map((match) => match[2] ?? '');
}

/** Where a relative import leads, as a path from the project's folder; null for a package. */
function target(file: string, specifier: string): string | null {
  if (!specifier.startsWith('.')) return null;
  const path = file.split('/').slice(0, -1);
  for (const step of (specifier.split('?')[0] ?? '').split('/')) {
    if (step === '..') path.pop();
    else if (step !== '.') path.push(step);
  }
  return path.join('/');
}

/** The chapters' shapes hold the shape of a step. */
function isStepShape(file: string, to: string): boolean {
  return file.endsWith('schema.ts') && to === 'src/core/steps/schema.ts';
}

const packagesOfCore: Readonly<Record<string, RegExp>> = {
  zod: /(^|\/|\.)schema\.ts$/,
  'clipper2-ts': /^src\/core\/geometry\//,
};
const withNode = /^src\/(cli|site)\/|^src\/reading\/disk\.ts$|^src\/drawing\/make-[^/]*\.ts$/;

function packageFault(file: string, name: string): string | null {
  if (name.startsWith('node:')) return withNode.test(file) ? null : `${file} imports ${name}`;
  const only = packagesOfCore[name];
  if (only !== undefined && !only.test(file)) return `${file} imports ${name}`;
  return file.startsWith('src/core/') && only === undefined ? `${file} imports ${name}` : null;
}

function importFault(file: string, specifier: string): string | null {
  const to = target(file, specifier);
  if (to === null) return packageFault(file, specifier);
  const [from, room] = [roomOf(file), roomOf(to)];
  const allowed = from === room || table[from]?.includes(room) === true || isStepShape(file, to);
  return allowed || !to.startsWith('src/') ? null : `${file} imports ${to}`;
}

const defaultExport = /^\s*export\s+default\b|^\s*export\s*\{[^}]*\bas\s+default\b/m;

function exportFault(file: string, text: string): string | null {
  const asked = !file.endsWith('.ts') || file.endsWith('.d.ts') || file === 'src/site/content.config.ts';
  return !asked && defaultExport.test(text.replace(comment, '$1')) ? `${file} has a default export` : null;
}

/** Templates may hold each other, as a step holds words and words hold lists of steps; each is a function of its data. */
function follows(file: string, to: string): boolean {
  return !(file.endsWith('.astro') && to.endsWith('.astro'));
}

/** One cycle of files, first file repeated at the end; null if there is none. */
export function cycleIn(sources: Sources): readonly string[] | null {
  const finished = new Set<string>();
  const visit = (file: string, path: readonly string[]): readonly string[] | null => {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file];
    if (finished.has(file)) return null;
    for (const specifier of importsOf(sources[file] ?? '')) {
      const to = target(file, specifier);
      const found = to !== null && sources[to] !== undefined && follows(file, to) ? visit(to, [...path, file]) : null;
      if (found !== null) return found;
    }
    finished.add(file);
    return null;
  };
  for (const file of Object.keys(sources)) {
    const found = visit(file, []);
    if (found !== null) return found;
  }
  return null;
}

/** Everything in the sources that the table does not allow, one sentence each. */
export function importFaults(sources: Sources): string[] {
  const faults = Object.entries(sources).flatMap(([file, text]) => [
    ...(table[roomOf(file)] === undefined ? [`${file} stands in no room`] : []),
    ...importsOf(text).map((specifier) => importFault(file, specifier)),
    exportFault(file, text),
  ]);
  const cycle = cycleIn(sources);
  return [...faults.filter((fault) => fault !== null), ...(cycle === null ? [] : [`cycle: ${cycle.join(' -> ')}`])];
}
