import type { SectionAsk } from './land.ts';
import type { Reader } from './reader.ts';
import type { Scenery } from './schema.ts';

type Asked = NonNullable<Scenery['ground']>['sections'][number];

/** A section as its author asks for it; a cut or stretch that goes nowhere is a fault. */
export function sectionAsk(section: Asked, at: string, reader: Reader): SectionAsk {
  const before = reader.faults.length;
  const ask: SectionAsk = { id: section.id, at, way: wayOf(section, reader) };
  if (reader.faults.length === before && goesNowhere(ask)) {
    reader.faults.push({
      ...{ rule: 'section-nowhere', at, what: `section '${ask.id}' ends where it starts` },
      mend: 'write two places that differ for from: and to:',
    });
  }
  return ask;
}

function wayOf(section: Asked, reader: Reader): SectionAsk['way'] {
  if (!('line' in section)) {
    return { kind: 'cut', from: reader.point(section.from), to: reader.point(section.to) };
  }
  const { line, from, to } = section;
  const read = (value: typeof from) => (value === undefined ? null : reader.number(value));
  return { kind: 'line', line, from: read(from), to: read(to) };
}

function goesNowhere({ way }: SectionAsk): boolean {
  if (way.kind === 'cut') return way.from[0] === way.to[0] && way.from[1] === way.to[1];
  return way.to !== null && way.to === (way.from ?? 0);
}
