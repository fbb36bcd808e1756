import type { DistrictInput, WiringInput } from './input.ts';

/** Lines in no district, and loads that stand on the deck, hang on the supply itself. */
export const REST = 'rest';

/** The district a line belongs to. */
export function districtOf(districts: readonly DistrictInput[], line: string): string {
  return districts.find(({ lines }) => lines.includes(line))?.id ?? REST;
}

/** Every district that has a line or a load, the author's first; what is in none is switched off by the supply. A. */
export function districtsOf({
  districts,
  rails,
  loads,
  supply,
}: Pick<WiringInput, 'districts' | 'rails' | 'loads' | 'supply'>) {
  const left = rails.lines.filter(({ id }) => districtOf(districts, id) === REST).map(({ id }) => id);
  const placed = loads.some(({ place }) => place.kind === 'place');
  const rest: readonly DistrictInput[] =
    left.length > 0 || placed ? [{ id: REST, lines: left, tripsAt: supply.tripsAt }] : [];
  return [...districts, ...rest];
}

/** What a district is called: lines in none are the whole layout, or all that is left of it. */
export function districtName({ districts }: Pick<WiringInput, 'districts'>, id: string): string {
  if (id !== REST) return id;
  return districts.length === 0 ? 'the whole layout' : 'the rest of the layout';
}
