import type { Caution } from './step.ts';

/** A caution with the words in a step's tools, materials or deeds that call for it. */
type CautionRule = Caution & { readonly words: readonly string[] };

const rule = (id: string, words: readonly string[], text: string, source: string): CautionRule => ({
  id,
  words,
  text,
  source,
});

/** Tools that make wood dust. */
const DUSTY: readonly string[] = [
  ...['table-saw', 'router', 'router-table', 'trim-router', 'circular-saw', 'track-saw', 'plunge-saw', 'jigsaw'],
  ...['bandsaw', 'mitre-saw', 'planer', 'sander', 'disc-sander', 'sandpaper'],
];

/** Saws moved by hand. */
export const HAND_SAWS: readonly string[] = 'razor-saw keyhole-saw handsaw tenon-saw coping-saw fretsaw hacksaw'.split(
  ' ',
);

/** Wet work: what drips or runs. */
const WET: readonly string[] = ['water', 'pva', 'plaster', 'plaster-cloth', 'resin', 'casting-resin'];

/**
 * In our own words; `source` names the body that publishes guidance. Local codes and licensed practice come first.
 * OSHA 1910.213, the NIOSH limit of wood dust and 16 CFR 1501 were looked up; the other titles are from memory.
 */
export const CAUTIONS: readonly CautionRule[] = [
  rule(
    'table-saw',
    ['table-saw'],
    'Guard and riving knife on, push stick in reach, and nobody in line behind the blade. Stop it before you clear a scrap.',
    'OSHA 29 CFR 1910.213',
  ),
  rule(
    'router',
    ['router', 'router-table', 'trim-router'],
    'Feed against the turn of the bit, never trap the work between bit and fence, and pull the plug to change a bit.',
    'OSHA 29 CFR 1910.213',
  ),
  rule(
    'circular-saw',
    ['circular-saw', 'track-saw', 'plunge-saw'],
    'Hold up both sides of the cut so that it cannot close on the blade. Clamp the work; both hands on the saw.',
    'OSHA 29 CFR 1926.304',
  ),
  rule(
    'disc-sander',
    ['disc-sander'],
    'Use only the side of the disc that runs down onto the table, with the dust drawn off.',
    'OSHA 29 CFR 1910.213',
  ),
  rule(
    'hearing-and-eyes',
    [
      'table-saw',
      'router',
      'router-table',
      'trim-router',
      'circular-saw',
      'track-saw',
      'jigsaw',
      'drill',
      'planer',
      'disc-sander',
    ],
    'Eyes and ears covered, sleeves and hair tied back, gloves off at anything that turns.',
    'NIOSH, Noise and Hearing Loss Prevention',
  ),
  rule(
    'wood-dust',
    DUSTY,
    'Draw the dust off where it is made and wear a fine-dust mask; 1 mg in a cubic metre is the recommended limit.',
    'NIOSH Pocket Guide, wood dust',
  ),
  rule(
    'mdf',
    ['mdf'],
    'MDF makes very fine dust with resin in it: extraction and mask for every cut, and clear the room after.',
    'HSE, wood dust: controlling the risks',
  ),
  rule(
    'glue',
    ['glue', 'wood-glue', 'pva', 'contact-adhesive'],
    'Read the tin before it is open: air, skin, and how long it must be left alone.',
    "the maker's safety data sheet",
  ),
  rule(
    'epoxy',
    ['epoxy'],
    'Epoxy can make skin allergic for good. Nitrile gloves, moving air, and never solvent to wash a hand.',
    'HSE, skin at work: epoxy resins',
  ),
  rule(
    'resin',
    ['resin', 'casting-resin'],
    'Pour thin, with air moving, gloves on, and keep a child out of the room until it has set hard. A thick pour gets hot.',
    'HSE, skin at work: epoxy resins',
  ),
  rule(
    'hot-wire',
    ['hot-wire', 'hot-wire-cutter'],
    'Cut polystyrene only, by an open window: its fume is styrene. Never a hot wire through polyurethane or PIR foam.',
    'NIOSH Pocket Guide, styrene',
  ),
  rule(
    'wet-by-wires',
    WET,
    'Pull the plug of the supply out of the wall before anything wet comes onto the table, and leave it out until all is dry: water runs along the wires under the deck.',
    'IEC 61558-2-7',
  ),
  rule(
    'soldering',
    ['soldering-iron', 'solder'],
    'Lead-free solder, fume drawn away from the face, iron in its stand, hands washed after. A child solders only beside an adult.',
    'HSE, solder fume and you',
  ),
  rule(
    'mains',
    ['mains', 'power-supply', 'transformer'],
    'Only a listed, unopened supply behind an RCD or GFCI. Nothing on the mains is home-made; the rest is for a licensed electrician. No mains plug on a low-voltage lead.',
    'IEC 61558-2-7; NFPA 70',
  ),
  rule(
    'unplug',
    ['power-supply'],
    'Plug out of the wall before a hand, a tool or an iron goes to a rail or a wire; in only to try, with somebody beside it.',
    'IEC 61558-2-7',
  ),
  rule(
    'tip-over',
    ['casters', 'drawer', 'leg', 'post'],
    'Lock the casters, keep what is heavy low, open one drawer at a time. A child will climb it: try with your own weight first.',
    'US CPSC, Anchor It',
  ),
  rule(
    'drawer-fingers',
    ['drawer'],
    'Mind fingers between drawer and frame; close it by its pull.',
    'US CPSC, Anchor It',
  ),
  rule(
    'small-parts',
    ['small-parts', 'figures', 'track-pins'],
    'Nothing that fits in a film tin where a child under three can reach it.',
    '16 CFR 1501',
  ),
  rule(
    'lifting',
    ['sheet', 'full-sheet'],
    'A full sheet takes two people: one at each end, knees bent, way cleared first.',
    'NIOSH 94-110, revised lifting equation',
  ),
  rule(
    'frame-turning',
    ['frame-turning'],
    'Two adults turn the frame over, one at each end, counting aloud. Clear the floor and send the children to the door.',
    'NIOSH 94-110, revised lifting equation',
  ),
  rule(
    'plaster',
    ['plaster', 'plaster-cloth'],
    'Setting plaster gets hot enough to burn: never cast a hand. Wear a mask while it is powder, and none of it down a sink.',
    'CLEAPSS, plaster of Paris',
  ),
  rule(
    'magnets',
    ['magnets', 'magnet', 'button-cell', 'button-cells'],
    'A swallowed magnet or button cell is an emergency at any age. Count them out and count them back.',
    'US CPSC, magnets and button cell batteries',
  ),
  rule(
    'superglue',
    ['superglue', 'hot-glue', 'glue-gun'],
    'Goggles on: it bonds skin in seconds and its vapour stings. Hot glue burns; keep cold water near.',
    "the maker's safety data sheet",
  ),
  rule(
    'knives',
    ['craft-knife', 'knife', 'scalpel', 'chisel'],
    'Sharp blade, several light passes, the other hand behind the edge, and the cover on when it is put down.',
    'RoSPA, home safety',
  ),
  rule(
    'hand-saws',
    HAND_SAWS,
    'Hold the work in a clamp or vice, start with a light backward stroke, and the other hand never in line with the blade.',
    'OSHA 29 CFR 1910.242',
  ),
  rule(
    'flying-ends',
    ['razor-saw', 'rail-cutter', 'wire-cutters', 'wire-strippers', 'cutting-disc'],
    'Goggles on: ends of rail and wire fly, and thin blades snap. Hold the end that comes off, its cut turned away from faces; cut rail has edges like a knife.',
    'OSHA 29 CFR 1910.133',
  ),
  rule(
    'finish',
    ['sealer', 'varnish', 'oil-finish'],
    'Moving air and no flame near. A rag with oil in it can catch fire by itself: dry it flat outdoors before it goes in the bin.',
    "the maker's safety data sheet",
  ),
  rule(
    'spray-paint',
    ['spray-paint', 'spray-can', 'airbrush'],
    'An adult sprays, outdoors, with a mask for vapour and no flame or spark near.',
    'HSE, spray painting',
  ),
  rule(
    'static-grass',
    ['static-grass', 'static-grass-tool'],
    'It works with high voltage: not near wet solvent glue, not near decoders or a phone, and not with a pacemaker.',
    "the tool maker's instructions",
  ),
];

/** The cautions a step calls for, by the words of its tools, materials and deeds; in the table's order, `had` among them. */
export function cautionsFor(words: readonly string[], had: readonly Caution[] = []): Caution[] {
  const known = new Set(had.map(({ id }) => id));
  return CAUTIONS.filter((one) => known.has(one.id) || one.words.some((word) => words.includes(word))).map(
    ({ id, text, source }) => ({ id, text, source }),
  );
}

/** Whether dust is made of what is worked on. */
export function makesDust(tools: readonly string[]): boolean {
  return tools.some((tool) => DUSTY.includes(tool));
}
