import { benchworkSchema } from '../core/benchwork/schema.ts';
import { headSchema } from '../core/head.schema.ts';
import { type Entry, entrySchema } from '../core/log/schema.ts';
import type { Plan } from '../core/plan.ts';
import { scenerySchema } from '../core/scenery/schema.ts';
import { trackSchema } from '../core/track/schema.ts';
import { nearest } from '../core/units/nearest.ts';
import type { Problem, Spot, Spots } from '../core/units/problem.ts';
import { type Bare, quantityKit } from '../core/units/schema.ts';
import { wiringSchema } from '../core/wiring/schema.ts';
import { type Page, readPage } from './chapter.ts';
import { byCodeUnit, type ContentFile } from './content-file.ts';
import { namesProblems } from './cross-checks.ts';
import type { AllGoods } from './goods.ts';
import { type Chapter, roleOf, slugProblem } from './names.ts';
import { childValue } from './shape.schema.ts';
import { type Shaped, shapedPage } from './shaped.schema.ts';
import { fileProblem } from './source.ts';

/** A notebook's plan, whole or with what can be used of it (`sound` false), and its problems. */
export type ReadNotebook = {
  readonly plan: Plan | null;
  readonly sound: boolean;
  readonly problems: readonly Problem[];
};

type Pages = {
  readonly head: Page | null;
  readonly chapters: Readonly<Partial<Record<Chapter, Page>>>;
  readonly entries: readonly Page[];
  readonly photos: readonly string[];
  readonly problems: readonly Problem[];
};

function missing(file: string, what: string): Problem {
  return fileProblem(file, {
    rule: 'missing-file',
    what,
    mend: 'add it; `npm run new -- my-table` makes a notebook that is whole',
  });
}

function pagesOf(slug: string, files: readonly ContentFile[]): Pages {
  const problems: Problem[] = [];
  const chapters: Partial<Record<Chapter, Page>> = {};
  const entries: Page[] = [];
  const photos: string[] = [];
  let head: Page | null = null;
  for (const file of files) {
    const role = roleOf(file.path);
    if (role.kind === 'stray') problems.push(role.problem);
    if (role.kind === 'photo') photos.push(file.path.slice(file.path.lastIndexOf('/') + 1));
    if (role.kind === 'head') head = readPage(file, 'notebook');
    if (role.kind === 'entry') entries.push(readPage(file, `log.${role.id}`));
    if (role.kind !== 'chapter') continue;
    const other = chapters[role.chapter];
    if (other === undefined) chapters[role.chapter] = readPage(file, role.chapter);
    else
      problems.push(
        fileProblem(file.path, {
          rule: 'two-chapters',
          what: `${other.file} is this chapter already`,
          mend: 'keep one of the two files',
        }),
      );
  }
  const folder = `notebooks/${slug}`;
  if (head === null)
    problems.push(missing(`${folder}/notebook.md`, 'the notebook has no cover: notebook.md is missing'));
  if (chapters.benchwork === undefined)
    problems.push(missing(`${folder}/benchwork.md`, 'the notebook has no benchwork.md'));
  return { head, chapters, entries, photos, problems };
}

function entryOf(page: Page, read: Shaped<Omit<Entry, 'id'>>): Entry | null {
  return read.value === null ? null : { ...read.value, id: page.root.slice('log.'.length) };
}

function bareOf(head: Page | null): Bare {
  return head !== null && childValue(head.yaml.value, 'bare') === 'mm' ? 'mm' : null;
}

function spotsOf(pages: readonly Page[], goods: AllGoods, cover: string): Spots {
  const whole = (file: string, path: string): Spot => ({ file, line: 1, column: 1, path });
  const own = pages.flatMap((page) => [[page.root, whole(page.file, page.root)] as const, ...page.yaml.values]);
  return Object.fromEntries([...Object.entries(goods.spots), ...own, ['', whole(cover, '')]]);
}

function allPages({ head, chapters, entries }: Pages): readonly Page[] {
  return [head, chapters.benchwork, chapters.track, chapters.wiring, chapters.scenery, ...entries].filter(
    (page) => page !== null && page !== undefined,
  );
}

function shapes({ head, chapters, entries }: Pages) {
  const kit = quantityKit(bareOf(head));
  const { benchwork, track, wiring, scenery } = chapters;
  const entry = entrySchema(kit);
  return {
    head: head === null ? null : shapedPage(headSchema(kit), head),
    benchwork: benchwork === undefined ? null : shapedPage(benchworkSchema(kit), benchwork),
    track: track === undefined ? null : shapedPage(trackSchema(kit), track),
    wiring: wiring === undefined ? null : shapedPage(wiringSchema(kit), wiring),
    scenery: scenery === undefined ? null : shapedPage(scenerySchema(kit), scenery),
    entries: entries.map((page) => shapedPage(entry, page)),
  };
}

/** Reads one notebook's files, photos among them by name. */
export function readNotebook(slug: string, files: readonly ContentFile[], goods: AllGoods): ReadNotebook {
  const pages = pagesOf(slug, files);
  const slugged = slugProblem(slug, `notebooks/${slug}/notebook.md`);
  const read = shapes(pages);
  const all = allPages(pages);
  const value = <T>(shape: Shaped<T> | null): T | null => shape?.value ?? null;
  const log = pages.entries.flatMap((page, i) => {
    const shape = read.entries[i];
    return shape === undefined ? [] : (entryOf(page, shape) ?? []);
  });
  const content = {
    head: value(read.head),
    benchwork: value(read.benchwork),
    track: value(read.track),
    wiring: value(read.wiring),
    scenery: value(read.scenery),
    log: log.sort((a, b) => byCodeUnit(a.date, b.date) || byCodeUnit(a.id, b.id)),
  };
  const spots = spotsOf(all, goods, `notebooks/${slug}/notebook.md`);
  const shaped = [read.head, read.benchwork, read.track, read.wiring, read.scenery, ...read.entries].filter(
    (one) => one !== null,
  );
  const own = [
    ...(slugged === null ? [] : [slugged]),
    ...pages.problems,
    ...all.flatMap((page) => page.problems),
    ...shaped.flatMap((shape) => shape.problems),
  ];
  const cut = cutChapters(pages);
  const names = namesProblems({ ...content, pages: all, photos: pages.photos, cut, shared: goods.shared, spots });
  const problems = [...own, ...elsewhere(names, own)];
  return { plan: planOf(slug, content, { all, goods, spots }), sound: problems.length === 0, problems };
}

/** Problems at places where nothing was told yet: two at one place are mostly one mistake. */
function elsewhere(more: readonly Problem[], told: readonly Problem[]): readonly Problem[] {
  const place = ({ file, line, column }: Problem) => `${file}:${line}:${column}`;
  const places = new Set(told.map(place));
  return more.filter((problem) => !places.has(place(problem)));
}

/** Chapters whose names cannot all be known: there, but not read to the end. */
function cutChapters({ chapters }: Pages): ReadonlySet<string> {
  const pages = Object.values(chapters);
  return new Set(pages.filter((page) => !page.parted || page.yaml.cut).map((page) => page.root));
}

type Content = Pick<Plan, 'track' | 'wiring' | 'scenery' | 'log'> & {
  readonly head: Plan['head'] | null;
  readonly benchwork: Plan['benchwork'] | null;
};

/** A draft's unknown sheets, told already, become known ones, so that its other values can be checked; plans have none. */
function onKnownSheets(benchwork: Plan['benchwork'], stock: Plan['stock']): Plan['benchwork'] {
  const sheets = stock.filter((item) => item.kind === 'sheet' || item.kind === 'board').map((item) => item.id);
  const [any] = sheets;
  const known = (id: string) => (sheets.includes(id) ? id : (nearest(id, sheets) ?? any ?? id));
  const materials = Object.entries(benchwork.materials).map(([role, material]) => {
    if (typeof material === 'string') return [role, known(material)] as const;
    return [role, { ...material, stock: known(material.stock) }] as const;
  });
  return { ...benchwork, materials: Object.fromEntries(materials) };
}

function planOf(
  slug: string,
  content: Content,
  rest: { readonly all: readonly Page[]; readonly goods: AllGoods; readonly spots: Spots },
): Plan | null {
  const { head, benchwork } = content;
  if (head === null || benchwork === null) return null;
  const prose = rest.all.map((page) => page.prose);
  const { stock, trains } = rest.goods;
  return {
    ...content,
    slug,
    head,
    benchwork: onKnownSheets(benchwork, stock),
    stock,
    trains,
    prose,
    spots: rest.spots,
  };
}
