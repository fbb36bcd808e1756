import { z } from 'zod';
import { literalKit } from '../units/literal.schema.ts';
import { quantityKit } from '../units/schema.ts';
import { dottedName, words, yesNo } from '../units/words.schema.ts';

const literal = literalKit(quantityKit(null));

const goods = {
  /** name that notebooks point to */
  id: dottedName,
  name: words,
  /** document, edition and table its figures come from */
  source: words,
  /** of one buying unit */
  price: literal.price.nullable().default(null),
};

const thickness = z.strictObject({
  /** the name in the shop */
  nominal: literal.length,
  /** what its maker lists as the mean */
  listed: literal.length,
  low: literal.length,
  high: literal.length,
});

const size = z.strictObject({
  length: literal.length,
  width: literal.length,
  /** direction of the face grain */
  grain: z.enum(['length', 'width', 'any']),
  price: literal.price.nullable().default(null),
});

/** Modulus of elasticity along and across the face grain. */
const stiffness = z.strictObject({ along: literal.stress, across: literal.stress }).nullable().default(null);
const bending = literal.stress.nullable().default(null);

const sheet = z.strictObject({
  kind: z.literal('sheet'),
  ...goods,
  material: z.enum(['plywood', 'mdf', 'hardboard', 'foam', 'cork', 'osb', 'plastic']),
  thickness,
  sizes: z.array(size).min(1, 'at least one size'),
  density: literal.density,
  stiffness,
  bending,
});

const board = z.strictObject({
  kind: z.literal('board'),
  ...goods,
  thickness,
  width: literal.length,
  lengths: z.array(literal.length).min(1, 'at least one length'),
  density: literal.density,
  stiffness,
  bending,
});

const wire = z
  .strictObject({
    kind: z.literal('wire'),
    ...goods,
    /** copper area in mm2 */
    area: literal.number,
    gauge: words.nullable().default(null),
    /** of one metre at 20 degrees Celsius */
    'ohm-per-metre': literal.resistance,
    /** over the insulation */
    outside: literal.length,
    amps: z.strictObject({ chassis: literal.current, cautious: literal.current }),
    /** of the two wires of a pair, where the author has chosen them */
    colours: z.tuple([words, words]).nullable().default(null),
  })
  .transform(({ 'ohm-per-metre': ohmPerMetre, ...rest }) => ({ ...rest, ohmPerMetre }));

const caster = z
  .strictObject({
    kind: z.literal('caster'),
    ...goods,
    mount: z.enum(['plate', 'stem']),
    'overall-height': literal.length,
    wheel: literal.length,
    'swivel-radius': literal.length,
    plate: z.tuple([literal.length, literal.length]).nullable().default(null),
    'plate-thickness': literal.length.nullable().default(null),
    bolts: z
      .strictObject({ diameter: literal.length, spacing: z.tuple([literal.length, literal.length]) })
      .nullable()
      .default(null),
    /** thread of its stem */
    stem: literal.length.nullable().default(null),
    locks: yesNo,
    /** load of one caster, in grams inside the schema, kg in the goods */
    load: literal.mass,
  })
  .transform(({ 'overall-height': overallHeight, 'swivel-radius': swivelRadius, load, ...more }) => {
    const { 'plate-thickness': plateThickness, ...rest } = more;
    return {
      ...rest,
      plateThickness,
      overallHeight,
      swivelRadius,
      load: load / 1000,
    };
  });

const cover = z
  .strictObject({
    kind: z.literal('cover'),
    ...goods,
    /** what is bought: a roll, a bag, a bottle */
    unit: words,
    /** how long and wide the area one unit covers */
    covers: z.tuple([literal.length, literal.length]).nullable().default(null),
    /** volume one unit fills */
    fills: literal.volume.nullable().default(null),
    /** kg per m2 when laid */
    'kg-per-square-metre': literal.number.nullable().default(null),
    /** how many layers are laid */
    layers: literal.number.default(1),
    /** share of each piece that lies over its neighbour */
    overlap: literal.number.default(0),
    /** how thick it is laid, for goods bought by volume */
    depth: literal.length.nullable().default(null),
  })
  .transform(({ covers, fills, 'kg-per-square-metre': massPerSquareMetre, ...rest }) => ({
    ...rest,
    coversArea: covers === null ? null : covers[0] * covers[1],
    fillsVolume: fills,
    massPerSquareMetre,
  }));

const hardware = z.strictObject({
  kind: z.literal('hardware'),
  ...goods,
  form: z.enum(['screw', 'bolt', 'nut', 'washer', 'insert', 'slide', 'bracket', 'catch', 'pull', 'foot', 'biscuit']),
  diameter: literal.length.nullable().default(null),
  length: literal.length.nullable().default(null),
  /** hole in the wood an insert asks for */
  hole: literal.length.nullable().default(null),
  /** how many are in one buying unit */
  pack: literal.number,
});

/** One item of stock, its figures evaluated. */
export function stockSchema() {
  return z.discriminatedUnion('kind', [sheet, board, wire, caster, cover, hardware]);
}

/** One file of content/stock. */
export function stockFileSchema() {
  return z.strictObject({ stock: z.array(stockSchema()) });
}
