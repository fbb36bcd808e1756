/** What can be bought. Lengths mm, masses g or kg/m3, resistance ohm per m, stress N/mm2. Every item names its source. */
type Goods = {
  readonly id: string;
  readonly name: string;
  /** document, edition, table; or 'common practice, no source' */
  readonly source: string;
  /** price of one buying unit, if the author gave one */
  readonly price: { readonly value: number; readonly currency: string } | null;
};

/** Nominal, listed and low to high are three things; a measured reading is the author's and lives in the notebook. */
export type Thickness = {
  readonly nominal: number;
  readonly listed: number;
  readonly low: number;
  readonly high: number;
};

export type StockSize = {
  readonly length: number;
  readonly width: number;
  /** direction of the face grain along the sheet */
  readonly grain: 'length' | 'width' | 'any';
  readonly price: { readonly value: number; readonly currency: string } | null;
};

export type SheetStock = Goods & {
  readonly kind: 'sheet';
  readonly material: 'plywood' | 'mdf' | 'hardboard' | 'foam' | 'cork' | 'osb' | 'plastic';
  readonly thickness: Thickness;
  readonly sizes: readonly StockSize[];
  readonly density: number;
  /** N/mm2, along and across the face grain */
  readonly stiffness: { readonly along: number; readonly across: number } | null;
  readonly bending: number | null;
};

export type BoardStock = Goods & {
  readonly kind: 'board';
  readonly thickness: Thickness;
  readonly width: number;
  readonly lengths: readonly number[];
  readonly density: number;
  readonly stiffness: { readonly along: number; readonly across: number } | null;
  readonly bending: number | null;
};

export type WireStock = Goods & {
  readonly kind: 'wire';
  /** copper area, mm2 */
  readonly area: number;
  readonly gauge: string | null;
  readonly ohmPerMetre: number;
  readonly outside: number;
  readonly amps: { readonly chassis: number; readonly cautious: number };
  /** of the two wires of a pair, as the author has them; null or absent: the usual ones */
  readonly colours?: readonly [string, string] | null;
};

export type CasterStock = Goods & {
  readonly kind: 'caster';
  readonly mount: 'plate' | 'stem';
  readonly overallHeight: number;
  readonly wheel: number;
  readonly swivelRadius: number;
  readonly plate: readonly [number, number] | null;
  readonly bolts: { readonly diameter: number; readonly spacing: readonly [number, number] } | null;
  /** how thick its plate is, and the thread of its stem, mm; null or absent: nobody measured it */
  readonly plateThickness?: number | null;
  readonly stem?: number | null;
  readonly locks: boolean;
  /** kg a caster */
  readonly load: number;
};

/** Goods that cover an area or fill a volume: plaster cloth, ground foam, paint, glue, ballast, resin. */
export type CoverStock = Goods & {
  readonly kind: 'cover';
  readonly unit: string;
  /** what one buying unit covers, mm2, or fills, mm3; one of the two */
  readonly coversArea: number | null;
  readonly fillsVolume: number | null;
  /** kg per m2 when laid */
  readonly massPerSquareMetre: number | null;
  /** how many layers are laid, 1 when absent, and what share of each lies over its neighbour, 0 when absent */
  readonly layers?: number;
  readonly overlap?: number;
  /** how thick it is laid, mm; for goods bought by volume */
  readonly depth?: number | null;
};

export type HardwareStock = Goods & {
  readonly kind: 'hardware';
  readonly form:
    | 'screw'
    | 'bolt'
    | 'nut'
    | 'washer'
    | 'insert'
    | 'slide'
    | 'bracket'
    | 'catch'
    | 'pull'
    | 'foot'
    | 'biscuit';
  readonly diameter: number | null;
  readonly length: number | null;
  /** hole in the wood an insert asks for, mm; null or absent: nobody said */
  readonly hole?: number | null;
  readonly pack: number;
};

export type Stock = SheetStock | BoardStock | WireStock | CasterStock | CoverStock | HardwareStock;
