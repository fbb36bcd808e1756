import type { Fastener } from '../../stock/fastener.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import { CLAMPED, type Kit, ofRole } from './assembling.ts';
import { type Draft, draft } from './draft.ts';
import { fastenerLines, fastenersOf, fixingsOf, nutsOf, onlyItems, otherItems } from './hardware.ts';
import { counted, instanceIds, instances } from './words.ts';

/** Legs built on the bench, then bolted to the frame, so that they come off again for the move. */
export function legDrafts(kit: Kit): Draft[] {
  const legs = ofRole(kit.parts, 'leg');
  if (legs.length === 0) return [];
  return [building(kit), bolting(kit)];
}

/** Bolts that hold legs to the frame. */
function legBolts(kit: Kit): readonly Fastener[] {
  return fastenersOf(kit, 'leg.').filter(({ form }) => form === 'bolt');
}

function buildLines(kit: Kit): Sentence[] {
  const of = (role: string) => kit.parts.filter((part) => part.role === role);
  const [layers, halves, rails] = [of('leg-layer'), of('leg-half'), of('leg-rail')];
  const inner = fastenersOf(kit, 'leg.').filter(({ form }) => form === 'screw');
  return [
    ...layers.map(
      (part) =>
        say`Glue the layers face to face, ends flush: ${length(part.blank.length)} long, ${length(part.blank.width)} across. Alternate which way the good face looks, so that they don't bow.`,
    ),
    ...halves.map(
      (part) =>
        say`${instances([part])}: dry first. Blocks and pads in their dados pull the mitre shut; tape outside, clamp over cauls.`,
    ),
    ...rails.map(
      (part) => say`Rails across both uprights in their dados, ${length(part.blank.length)} long; diagonals alike.`,
    ),
    say`Under each foot two layers, the grain of one across the other's. What carries the wheel is bolted into their faces: screws into the end of a leg don't count.`,
    ...bracketLines(kit),
    ...fastenerLines(fixingsOf(kit, 'bracket.')),
    ...fastenerLines(inner),
    ...fastenerLines(fixingsOf(kit, 'caster.')),
    ...otherItems(kit, 'leg.', nutsOf(kit, legBolts(kit))),
  ];
}

/** Where the brackets go that the legs' hardware has. */
function bracketLines({ hardware, stock }: Kit): Sentence[] {
  const brackets = stock.flatMap((one) => (one.kind === 'hardware' && one.form === 'bracket' ? [one.id] : []));
  const legs = hardware.filter(({ item, where }) => brackets.includes(item) && /(^|\.)leg\./.test(where));
  const count = legs.reduce((sum, { quantity }) => sum + quantity, 0);
  if (count === 0) return [];
  return [
    say`${counted(count, 'bracket')}: two in the corner of each foot and its pad, on the ledge that reaches inward, all screws into faces of the sheet.`,
  ];
}

function building(kit: Kit): Draft {
  const { id } = kit.frame;
  const makes = instanceIds(ofRole(kit.parts, 'leg'));
  return draft({
    id: `${id}-legs-build`,
    title: `Build the legs of ${id}`,
    work: [{ kind: 'machining', noun: `${id}-legs-build`, makes, lines: buildLines(kit) }],
    tools: ['wood-glue', 'clamps', 'drill', 'screwdriver'],
    deeds: ['leg'],
    wait: CLAMPED,
    child: 'does with an adult',
    after: ['rout', 'holes', 'edges', 'mark', 'crosscut', 'panels'],
  });
}

function bolting(kit: Kit): Draft {
  const { id } = kit.frame;
  const makes = instanceIds(ofRole(kit.parts, 'leg'));
  const bolts = legBolts(kit);
  const lines = [
    say`Frame upside down on a flat floor. Each leg into its own corner, down until its top stands on the floor and is level with the frame's; a washer under head and nut; tight, not crushed.`,
    ...fastenerLines(bolts),
    ...onlyItems(kit, 'leg.', nutsOf(kit, bolts)),
    say`Turn it over with two people and lock every caster that locks before anyone leans on it. For a move through a narrow door take these nuts off again: frame and legs go one after the other.`,
  ];
  return draft({
    id: `${id}-legs-on`,
    title: `Bolt the legs to ${id}`,
    work: [{ kind: 'machining', noun: `${id}-legs-on`, makes, lines }],
    tools: ['spanner'],
    deeds: ['leg', 'frame-turning'],
    people: 2,
    child: 'away',
    after: [`${id}-legs-build`, `${id}-square`, `${id}-flanges`],
    fits: makes,
  });
}
