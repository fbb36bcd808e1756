import type { CoverStock } from '../stock/goods.ts';

/** Something to buy for the land: what for, how much is needed, and in how many units it is sold. */
export type LandQuantity = {
  /** id of the stock; null when its author named none */
  readonly stock: string | null;
  readonly name: string;
  /** the zone, water, line or layer it is for */
  readonly for: string;
  readonly need: number;
  readonly unit: 'm2' | 'litre' | 'count' | 'm' | 'sheet';
  /** whole buying units; null when the stock does not say what one covers */
  readonly buy: number | null;
  readonly buyUnit: string | null;
};

const M2 = 1e6;
const LITRE = 1e6;

/** Whole units, noise of the last bits left out. */
export function wholeUnits(need: number, each: number): number {
  return Math.ceil(need / each - 1e-9);
}

/** What one unit of a stock covers once laid in all its layers with their overlap, mm2; null when it isn't sold by area. */
export function areaLaid(stock: CoverStock): number | null {
  const { coversArea, layers = 1, overlap = 0 } = stock;
  return coversArea === null ? null : coversArea / (layers * (1 + overlap));
}

/** A stock over so much surface, mm2: by the area one unit covers, else by how thick it is laid. */
export function coverQuantity(stock: CoverStock, surface: number, zone: string): LandQuantity {
  const { id, name, unit, fillsVolume, depth = null } = stock;
  const base = { stock: id, name, for: zone };
  const laid = areaLaid(stock);
  if (laid !== null) {
    return { ...base, need: surface / M2, unit: 'm2', buy: wholeUnits(surface, laid), buyUnit: unit };
  }
  if (fillsVolume === null || depth === null)
    return { ...base, need: surface / M2, unit: 'm2', buy: null, buyUnit: unit };
  return volumeQuantity(stock, surface * depth, zone);
}

/** A stock that fills a volume, mm3. */
export function volumeQuantity(stock: CoverStock, volume: number, what: string): LandQuantity {
  const { id, name, unit, fillsVolume } = stock;
  const buy = fillsVolume === null ? null : wholeUnits(volume, fillsVolume);
  return { stock: id, name, for: what, need: volume / LITRE, unit: 'litre', buy, buyUnit: unit };
}
