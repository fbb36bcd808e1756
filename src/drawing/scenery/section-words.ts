import type { Section } from '../../core/scenery/section.ts';
import type { DrawingUnit } from '../drawing.ts';
import { saidLength } from '../figures.ts';

/** `chalk-hill-along` reads "Section along chalk hill"; an author's own id is told as it is, with its line of track. */
export function titleOf({ id, line }: Pick<Section, 'id' | 'line'>): string {
  const spoken = (text: string) => text.replaceAll('-', ' ');
  if (line !== null) return `Section ${spoken(id)}, along ${line}`;
  const way = id.endsWith('-along') ? 'along ' : id.endsWith('-across') ? 'across ' : '';
  return `Section ${way}${spoken(id.replace(/-(along|across)$/, ''))}`;
}

/** How far along the ground is highest, and how high; mm. */
export function peakOf({ heights }: Pick<Section, 'heights'>): readonly [s: number, height: number] {
  const top = heights.reduce((best, one) => (one[1] > best[1] ? one : best), heights[0] ?? [0, 0]);
  return [top[0], top[1]];
}

/** How long a section is, mm. */
export function lengthOf({ way }: Pick<Section, 'way'>): number {
  return way[way.length - 1]?.s ?? 0;
}

/** What a section shows, in words. */
export function sectionWords(section: Section, unit: DrawingUnit): string {
  const [along, top] = peakOf(section);
  const rises =
    top > 0
      ? `the ground rises to ${saidLength(top, unit)} over the deck, ${saidLength(along, unit)} along the cut`
      : 'the ground is level';
  const waters = section.water.map(
    ({ id, from, to }) => `${id} lies from ${saidLength(from, unit)} to ${saidLength(to, unit)}`,
  );
  return `${titleOf(section)}: ${[rises, ...waters].join('; ')}.`;
}
