import type { Stock } from '../core/stock/goods.ts';
import { stockFileSchema } from '../core/stock/schema.ts';
import { type Train, trainFileSchema } from '../core/track/train.schema.ts';
import type { Problem, Spot } from '../core/units/problem.ts';
import type { Written } from '../core/units/written.schema.ts';
import type { ContentFile } from './content-file.ts';
import { duplicatesIn } from './duplicates.ts';
import type { Shared } from './known.ts';
import { childValue, isList } from './shape.schema.ts';
import { shaped } from './shaped.schema.ts';
import { problemOn, type Source, sourceOf, textOf } from './source.ts';
import type { Yaml } from './yaml.ts';

type Named = { readonly id: string; readonly kind: string };
type Read<T> = { readonly items: readonly T[]; readonly yaml: Yaml; readonly problems: readonly Problem[] };

/** Items of one folder; `names` also has those with mistakes, and is null if some cannot be known. */
type Goods<T> = {
  readonly items: readonly T[];
  readonly names: readonly Named[] | null;
  readonly spots: Readonly<Record<string, Spot>>;
  readonly problems: readonly Problem[];
};

function readStock(source: Source): Read<Stock> {
  const { value, sound, yaml, problems } = shaped(stockFileSchema(), source, '');
  return { items: sound ? (value?.stock ?? []) : [], yaml, problems };
}

function readTrains(source: Source): Read<Train> {
  const { value, sound, yaml, problems } = shaped(trainFileSchema(), source, '');
  return { items: sound ? (value?.trains ?? []) : [], yaml, problems };
}

function textIn(item: Written, key: string): string {
  const value = childValue(item, key);
  return typeof value === 'string' ? value : '';
}

function namesIn(yaml: Yaml, folder: string): readonly Named[] {
  const list = childValue(yaml.value, folder) ?? [];
  return isList(list) ? list.map((item) => ({ id: textIn(item, 'id'), kind: textIn(item, 'kind') })) : [];
}

/** Ids that another file of the folder has already. */
function takenIds(names: readonly Named[], taken: ReadonlyMap<string, string>, folder: string) {
  return names.flatMap(({ id }, i) => {
    const file = taken.get(id);
    const telling = {
      rule: 'duplicate-id',
      what: `the id \`${id}\` is taken in ${file}`,
      mend: 'give one of them another id',
    };
    return id === '' || file === undefined ? [] : [{ at: `${folder}.${i}.id`, ...telling }];
  });
}

function readFolder<T>(files: readonly ContentFile[], folder: string, read: (source: Source) => Read<T>): Goods<T> {
  const [items, names, problems]: [T[], Named[], Problem[]] = [[], [], []];
  const spots: Record<string, Spot> = {};
  const taken = new Map<string, string>();
  let cut = false;
  for (const file of files) {
    const text = textOf(file);
    problems.push(...text.problems);
    cut ||= text.problems.length > 0;
    if (text.problems.length > 0) continue;
    const found = read(sourceOf(file.path, text.text, 1));
    const own = namesIn(found.yaml, folder);
    const spotOf = (at: string) => found.yaml.values.get(at) ?? { file: file.path, line: 1, column: 1, path: at };
    const twice = [...takenIds(own, taken, folder), ...duplicatesIn(folder, own)];
    problems.push(...found.problems, ...twice.map(({ at, ...telling }) => problemOn(spotOf(at), telling)));
    own.forEach(({ id }, i) => {
      taken.set(id, file.path);
      spots[`${folder}.${id}`] = spotOf(`${folder}.${i}`);
    });
    items.push(...found.items);
    names.push(...own);
    cut ||= found.yaml.cut;
  }
  return { items, names: cut ? null : names, spots, problems };
}

/** Stock and trains of the content folder, with what notebooks may name, and their places as `stock.<id>`. */
export type AllGoods = {
  readonly stock: readonly Stock[];
  readonly trains: readonly Train[];
  readonly shared: Shared;
  readonly spots: Readonly<Record<string, Spot>>;
  readonly problems: readonly Problem[];
};

export function readGoods(stockFiles: readonly ContentFile[], trainFiles: readonly ContentFile[]): AllGoods {
  const stock = readFolder(stockFiles, 'stock', readStock);
  const trains = readFolder(trainFiles, 'trains', readTrains);
  return {
    stock: stock.items,
    trains: trains.items,
    shared: { stock: stock.names, trains: trains.names },
    spots: { ...stock.spots, ...trains.spots },
    problems: [...stock.problems, ...trains.problems],
  };
}
