import type { Blank, Feature, Part } from '../../src/core/stock/part.ts';
import type { Measure } from '../../src/drawing/dimension.ts';

/** A figure as a reader takes it off the sheet: what it measures, of which features, its value in mm or degrees. */
export type Figure = { readonly measure: Measure; readonly of: readonly string[]; readonly value: number };

type Reading = {
  readonly value: (measure: Measure, id: string) => number | null;
  readonly within: number;
};

type Check = readonly [string, number | null, number];

/** One side of a patch: open to the blank's edge, printed itself, or the other side and the size. */
function ends(
  reading: Reading,
  id: string,
  axis: 'x' | 'y',
  limit: { low: boolean; high: boolean; end: number | null },
): readonly [number | null, number | null] {
  const [lowName, highName, sizeName] =
    axis === 'x' ? (['x0', 'x1', 'size-x'] as const) : (['y0', 'y1', 'size-y'] as const);
  const size = reading.value(sizeName, id);
  const low = limit.low ? 0 : reading.value(lowName, id);
  const high = limit.high ? limit.end : reading.value(highName, id);
  return [
    low ?? (high !== null && size !== null ? high - size : null),
    high ?? (low !== null && size !== null ? low + size : null),
  ];
}

function patchChecks(reading: Reading, feature: Extract<Feature, { patch: unknown }>, blank: Blank): readonly Check[] {
  const { x0, x1, y0, y1 } = feature.patch;
  const length = reading.value('length', '');
  const width = reading.value('width', '');
  const [ax, bx] = ends(reading, feature.id, 'x', { low: x0 <= 0.01, high: x1 >= blank.length - 0.01, end: length });
  const [ay, by] = ends(reading, feature.id, 'y', { low: y0 <= 0.01, high: y1 >= blank.width - 0.01, end: width });
  const pocket: readonly Check[] =
    'depth' in feature ? [['depth', reading.value('depth', feature.id), feature.depth]] : [];
  const corner: readonly Check[] =
    feature.corner > 0 ? [['corner radius', reading.value('radius', feature.id), feature.corner]] : [];
  return [
    ['left edge', ax, Math.max(0, x0)],
    ['right edge', bx, Math.min(blank.length, x1)],
    ['lower edge', ay, Math.max(0, y0)],
    ['upper edge', by, Math.min(blank.width, y1)],
    ...pocket,
    ...corner,
  ];
}

function pointChecks(reading: Reading, id: string, [x, y]: readonly [number, number]): readonly Check[] {
  return [
    ['x', reading.value('x', id), x],
    ['y', reading.value('y', id), y],
  ];
}

/** A corner on the blank's own edge is seen to be there; its figure is the blank's. */
function cornerChecks(
  reading: Reading,
  id: string,
  { point: [x, y], blank }: { readonly point: readonly [number, number]; readonly blank: Blank },
): readonly Check[] {
  const at = (value: number, measure: 'x' | 'y') => {
    const [end, size] = measure === 'x' ? [blank.length, 'length' as const] : [blank.width, 'width' as const];
    if (value <= 0.02) return 0;
    return value >= end - 0.02 ? reading.value(size, '') : reading.value(measure, id);
  };
  return [
    ['x', at(x, 'x'), x],
    ['y', at(y, 'y'), y],
  ];
}

function checksOf(reading: Reading, feature: Feature, blank: Blank): readonly Check[] {
  if ('patch' in feature) return patchChecks(reading, feature, blank);
  switch (feature.kind) {
    case 'hole':
    case 'counterbore': {
      const deep: readonly Check[] =
        feature.depth === 'through' ? [] : [['depth', reading.value('depth', feature.id), feature.depth]];
      return [
        ...pointChecks(reading, feature.id, feature.at),
        ['diameter', reading.value('diameter', feature.id), feature.diameter],
        ...deep,
      ];
    }
    case 'cut-out':
      return feature.outline.flatMap((point, i) => cornerChecks(reading, `${feature.id}#${i}`, { point, blank }));
    case 'taper':
      return [feature.from, feature.to].flatMap((point, i) =>
        cornerChecks(reading, `${feature.id}#${i}`, { point, blank }),
      );
    case 'mitre':
      return [['angle', reading.value('angle', feature.id), (feature.angle * 180) / Math.PI]];
    case 'trim':
      return [['trim', reading.value('size-x', feature.id), feature.by]];
    case 'roundover':
    case 'rounded-corner':
      return [['radius', reading.value('radius', feature.id), feature.radius]];
  }
}

/** Recomputes the blank and every feature from the figures; says what is missing or comes out elsewhere. */
export function recovered(part: Part, figures: readonly Figure[], within: number): readonly string[] {
  const table = new Map<string, number>();
  for (const { measure, of, value } of figures) {
    for (const id of of.length === 0 ? [''] : of) table.set(`${measure} ${id}`, value);
  }
  const reading: Reading = { value: (measure, id) => table.get(`${measure} ${id}`) ?? null, within };
  const blank: readonly Check[] = [
    ['length', reading.value('length', ''), part.blank.length],
    ['width', reading.value('width', ''), part.blank.width],
    ['thickness', reading.value('thickness', ''), part.blank.thickness],
  ];
  const checks = [
    ...blank.map((check) => ['the blank', check] as const),
    ...part.features.flatMap((feature) =>
      checksOf(reading, feature, part.blank).map((check) => [feature.id, check] as const),
    ),
  ];
  return checks.flatMap(([id, [name, found, meant]]) => {
    if (found === null || Number.isNaN(found)) return [`nothing printed fixes the ${name} of ${id}`];
    return Math.abs(found - meant) <= 2 * within ? [] : [`the ${name} of ${id} comes out at ${found}, not ${meant}`];
  });
}
