import type { Part } from '../../stock/part.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import { CLAMPED, type Kit, ofRole } from './assembling.ts';
import { type Draft, draft } from './draft.ts';
import { fastenerLines, fastenersOf, fixingsOf, itemLine } from './hardware.ts';
import { shelfHeights, slideHeights, spacerHeights } from './heights.ts';
import { instanceIds, instances } from './words.ts';

/** What slides take up beyond their half inch each side, 1/32 in; common practice, no source. mm. */
const SLIDE_SLACK = 25.4 / 32;
/** A box stands this far above its opening's edge while its slides are screwed on; the packers are as thick. mm. */
const PACKER = 6;

function work(
  kit: Kit,
  noun: string,
  { makes, lines }: { readonly makes: readonly string[]; readonly lines: readonly Sentence[] },
) {
  return [{ kind: 'machining', noun: `${kit.frame.id}-${noun}`, makes, lines } as const];
}

/** Spacers on the walls of the bays, while the frame is open from above. */
export function spacerDrafts(kit: Kit): Draft[] {
  const spacers = kit.parts.filter((part) => part.role === 'drawer-spacer');
  if (spacers.length === 0) return [];
  const lines = [
    ...spacerHeights(kit),
    say`Each spacer's free face is flush with the edge of the opening before it: hold a straightedge from the one to the other.`,
    say`Drill one, clamp it on the next and drill through its holes: all spacers share their errors.`,
    ...fastenerLines(fastenersOf(kit, 'spacer.')),
  ];
  const makes = instanceIds(spacers);
  return [
    draft({
      id: `${kit.frame.id}-spacers`,
      title: `Screw the drawer spacers into ${kit.frame.id}`,
      work: work(kit, 'spacers', { makes, lines }),
      tools: ['drill', 'screwdriver', 'straightedge'],
      after: [`${kit.frame.id}-square`, `${kit.frame.id}-flanges`, 'openings'],
      fits: makes,
    }),
  ];
}

/** Cleats, then the shelf laid on them, before the deck closes the bay from above. */
export function shelfDrafts(kit: Kit): Draft[] {
  const shelves = ofRole(kit.parts, 'shelf');
  if (shelves.length === 0) return [];
  const panels = shelves.filter((part) => part.role === 'shelf');
  const lines = [
    ...shelfHeights(kit),
    say`Cleats level with each other across the bay; lay a spirit level on the panel before the last screw.`,
    ...fastenerLines(fastenersOf(kit, 'shelf.')),
    ...panels.map(
      (part) =>
        say`${instances([part])}: ${length(part.blank.length)} by ${length(part.blank.width)}, laid in from above, not glued.`,
    ),
  ];
  const makes = instanceIds(shelves);
  return [
    draft({
      id: `${kit.frame.id}-shelves`,
      title: `Put the open shelves into ${kit.frame.id}`,
      work: work(kit, 'shelves', { makes, lines }),
      tools: ['drill', 'screwdriver', 'spirit-level'],
      child: 'does with an adult',
      after: [`${kit.frame.id}-square`, `${kit.frame.id}-flanges`, 'openings'],
      fits: makes,
    }),
  ];
}

/** Boxes glued, hung by shims, faces fitted to their own holes. */
export function drawerDrafts(kit: Kit): Draft[] {
  const drawers = kit.parts.filter((part) => part.role.startsWith('drawer') && part.role !== 'drawer-spacer');
  const box = drawers.filter((part) => part.role !== 'drawer-face' && part.role !== 'drawer-pull');
  if (box.length === 0) return [];
  const faces = drawers.filter((part) => !box.includes(part));
  return [boxes(kit, box), hanging(kit, box), facing(kit, faces)];
}

/** Outside of a box from its side's length and its front with what its joints leave, mm. */
function diagonalLine(parts: readonly Part[]): Sentence[] {
  const [side, end] = ['drawer-side', 'drawer-end'].map((role) => parts.find((part) => part.role === role));
  const rabbet = side?.features.find(({ kind }) => kind === 'rabbet');
  if (side === undefined || end === undefined || rabbet?.kind !== 'rabbet') return [];
  const [deep, wide] = [side.blank.length, end.blank.length + 2 * (side.blank.thickness - rabbet.depth)];
  // a box skewed by the slack over its depth has diagonals that differ by 2 W D sin(a) / diagonal (plane geometry)
  const out = (2 * wide * SLIDE_SLACK) / Math.hypot(deep, wide);
  return [
    say`Both diagonals of a box alike: slides forgive ${length(SLIDE_SLACK)}, which a box ${length(deep)} deep uses up when its diagonals differ by ${length(out)}.`,
  ];
}

function boxes(kit: Kit, parts: readonly Part[]): Draft {
  const makes = instanceIds(parts);
  const count = parts
    .filter((part) => part.role === 'drawer-bottom')
    .reduce((sum, part) => sum + part.places.length, 0);
  const lines = [
    say`${count === 1 ? '1 box' : `${count} boxes`}: glue in the corner joints only. The bottom is slid in dry and stays loose, so that it can move.`,
    ...diagonalLine(parts),
  ];
  return draft({
    id: `${kit.frame.id}-drawers-box`,
    title: 'Glue the drawer boxes',
    work: work(kit, 'drawers-box', { makes, lines }),
    tools: ['wood-glue', 'clamps', 'tape-measure'],
    deeds: ['drawer'],
    wait: CLAMPED,
    child: 'does with an adult',
    after: ['rout', 'mark', 'crosscut', 'panels', 'holes'],
  });
}

/** Where the slides' screws go; their holes are in the part drawings. */
function slideLines(kit: Kit): Sentence[] {
  const screws = fixingsOf(kit, 'slide.');
  if (screws.length === 0) return [];
  return [
    say`Their screws stand on the middle line of the slides, on the boxes' sides and on the spacers, as far from the front as the part drawings show; where your slides have their holes elsewhere, take the nearest.`,
    ...fastenerLines(screws),
  ];
}

function hanging(kit: Kit, parts: readonly Part[]): Draft {
  const makes = instanceIds(parts);
  const lines = [
    ...slideHeights(kit),
    say`Stand each box in its opening on packers of ${length(PACKER)}, centred by a shim on each side as thick as the slide is closed.`,
    say`Screw the slides on through their slots first, run the drawer, shift it until it closes level, then set the round holes.`,
    say`Try every box in its own hole now, before any finish: what binds is planed today.`,
    ...itemLine(kit, 'drawer.'),
    ...slideLines(kit),
  ];
  return draft({
    id: `${kit.frame.id}-drawers-hang`,
    title: 'Hang the drawers on their slides',
    work: work(kit, 'drawers-hang', { makes, lines }),
    tools: ['drill', 'screwdriver', 'shims', 'packers'],
    deeds: ['drawer'],
    child: 'does with an adult',
    after: [`${kit.frame.id}-drawers-box`, `${kit.frame.id}-spacers`, `${kit.frame.id}-trim`],
    fits: makes,
  });
}

function gapLine(faces: readonly Part[]): Sentence {
  const cut = faces.filter((part) => part.from !== undefined);
  const labels = cut.flatMap(({ places }) => places.map(({ label }) => label));
  return cut.length > 0
    ? say`Each face goes back to the hole it fell out of, its label the same as the hole's (${labels.join(', ')}), shims as thick as the bit all round it.`
    : say`Hold each face over its opening with an even overlap on all four sides.`;
}

function facing(kit: Kit, faces: readonly Part[]): Draft {
  const makes = instanceIds(faces);
  const lines = [
    gapLine(faces),
    say`Clamp face to box, and drill both in one go from inside the box; then the pull's holes through both in one go, so that they line up for good.`,
    ...fastenerLines(fastenersOf(kit, 'drawer.')),
    say`A catch behind each drawer holds it shut while the table rolls.`,
  ];
  return draft({
    id: `${kit.frame.id}-drawers-face`,
    title: 'Fit the faces and pulls',
    work: work(kit, 'drawers-face', { makes, lines }),
    tools: ['drill', 'screwdriver', 'shims', 'clamps'],
    deeds: ['drawer'],
    child: 'does with an adult',
    after: [`${kit.frame.id}-drawers-hang`, 'openings'],
    fits: makes,
  });
}
