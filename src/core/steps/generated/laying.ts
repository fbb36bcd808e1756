import { atMost, length, type Sentence, say } from '../../units/say.ts';
import { type Draft, singleDraft } from './draft.ts';

/** Risers stand at most so far apart under a raised roadbed, mm; common practice, no source. */
export const RISERS = 150;

/** A line's points to mark: how many, and the first and last of them by name. */
export type MarkWork = {
  readonly line: string;
  readonly points: number;
  readonly first: string;
  readonly last: string;
};

/** A slot through a deck: what asks for it, the part it is cut in, and its size; mm. */
export type SlotWork = { readonly by: string; readonly part: string; readonly size: readonly [number, number] };

/** Heights of a line's roadbed above the deck at places along it, mm. */
export type RaiseWork = {
  readonly line: string;
  readonly stations: readonly { readonly at: number; readonly height: number }[];
};

/** A turnout to lay: where its points stand on the line that sets it, mm. */
export type TurnoutWork = { readonly id: string; readonly line: string; readonly at: number };

/** A stretch of flexible track, and by how much one rail comes out longer than the other; mm. */
export type FlexWork = {
  readonly line: string;
  readonly from: number;
  readonly length: number;
  readonly slip: number;
};

/** What the steps of the track follow from. */
export type LayWork = {
  readonly marks: readonly MarkWork[];
  readonly slots: readonly SlotWork[];
  readonly raised: readonly RaiseWork[];
  readonly roadbed: { readonly stock: string; readonly width: number; readonly length: number } | null;
  readonly turnouts: readonly TurnoutWork[];
  readonly flex: readonly FlexWork[];
  /** ready-made pieces, each kind as a sentence */
  readonly sections: readonly Sentence[];
  readonly pins: number;
  /** names of the trains that are to run */
  readonly trains: readonly string[];
  /** steps before the first, by full id: the last of each deck */
  readonly before: readonly string[];
};

/** The generated steps of the track after which wires are soldered and land is built, by full id. */
export const TRACK_LAID: readonly string[] = ['track.lay-turnouts', 'track.lay-track', 'track.try-track'];

/** The steps of the track in order: lines on the deck, slots, roadbed raised and glued, turnouts, rails, and a trial by hand. */
export function layDrafts(work: LayWork): Draft[] {
  return [
    ...(work.marks.length > 0 ? [drawing(work)] : []),
    ...(work.slots.length > 0 ? [slotting(work)] : []),
    ...(work.raised.length > 0 ? [raising(work)] : []),
    ...(work.roadbed === null ? [] : [bedding(work.roadbed)]),
    ...(work.turnouts.length > 0 ? [layingTurnouts(work)] : []),
    ...(work.flex.length + work.sections.length > 0 ? [layingRails(work)] : []),
    ...(work.marks.length > 0 ? [trying(work)] : []),
  ];
}

function drawing({ marks, before }: LayWork): Draft {
  return singleDraft({
    chapter: 'track',
    id: 'draw-lines',
    title: 'Draw the lines on the deck',
    lines: [
      say`Mark every point of the set-out table from the left and the front edge, and check it from both front corners before any arc is drawn.`,
    ],
    says: marks.map(({ line, points, first, last }) =>
      points === 1 ? say`${line}: ${first}.` : say`${line}: ${String(points)} points, ${first} to ${last}.`,
    ),
    tools: ['trammel', 'square', 'pencil'],
    child: 'does with an adult',
    after: before,
  });
}

function slotting({ slots }: LayWork): Draft {
  return singleDraft({
    chapter: 'track',
    id: 'cut-slots',
    title: 'Cut the slots for the throw bars',
    lines: [
      say`Drill both ends of a slot, saw between them, and try the motor's wire from below before any roadbed lies.`,
    ],
    says: slots.map(({ by, part, size: [long, wide] }) => say`${by}: ${length(long)} by ${length(wide)}, in ${part}.`),
    tools: ['drill', 'keyhole-saw'],
    after: ['draw-lines'],
  });
}

function raising({ raised }: LayWork): Draft {
  return singleDraft({
    chapter: 'track',
    id: 'raise-lines',
    title: 'Raise the lines on risers',
    lines: [
      say`Heights are from the deck's top to the underside of the roadbed. Set a riser at each place, and at most ${atMost(RISERS)} apart where the height stays the same between two. Stretch the roadbed over them and look along it: no riser may show as a hump.`,
    ],
    says: raised.map(heightsOf),
    tools: ['steel-rule', 'wood-glue'],
    child: 'does with an adult',
    after: ['draw-lines', 'cut-slots'],
  });
}

function heightsOf({ line, stations }: RaiseWork): Sentence {
  return stations.flatMap(({ at, height }, i): Sentence => {
    const end = i === stations.length - 1 ? '.' : '; ';
    return say`${i === 0 ? `${line}: ` : ''}${length(height)} at ${length(at)}${end}`;
  });
}

function bedding({ stock, width, length: long }: NonNullable<LayWork['roadbed']>): Draft {
  return singleDraft({
    chapter: 'track',
    id: 'glue-roadbed',
    title: 'Glue the roadbed',
    lines: [
      say`Its middle on the drawn line, ends staggered between the two halves of a curve; weigh it down and let it dry flat.`,
    ],
    says: [say`${stock}: ${length(long)} in all, ${length(width)} wide.`],
    tools: ['knife', 'wood-glue', 'weights'],
    child: 'does with an adult',
    after: ['draw-lines', 'cut-slots', 'raise-lines'],
  });
}

function layingTurnouts({ turnouts }: LayWork): Draft {
  return singleDraft({
    chapter: 'track',
    id: 'lay-turnouts',
    title: 'Lay the turnouts',
    lines: [
      say`Turnouts first, the plain track comes to them. The throw bar has to fall from side to side by its own weight when the deck is tilted; no glue and no pin near it.`,
    ],
    says: turnouts.map(({ id, line, at }) => say`${id}: its points at ${length(at)} along ${line}.`),
    tools: ['steel-rule', 'pin-pusher'],
    deeds: ['track-pins'],
    child: 'does with an adult',
    after: ['draw-lines', 'cut-slots', 'raise-lines', 'glue-roadbed'],
  });
}

function layingRails({ flex, sections, pins }: LayWork): Draft {
  const bent = flex.length > 0;
  return singleDraft({
    chapter: 'track',
    id: 'lay-track',
    title: 'Lay the track between the turnouts',
    lines: [
      say`Joiners on both rails, no kink at a joint in a curve${bent ? ': solder the joint straight, then bend' : ''}. About ${String(pins)} pins, none driven so far that the gauge closes.`,
    ],
    says: [...flex.map(flexOf), ...sections],
    tools: ['rail-cutter', 'track-gauge', 'file', 'pin-pusher', ...(bent ? ['soldering-iron'] : [])],
    deeds: ['track-pins'],
    child: 'does with an adult',
    after: ['draw-lines', 'cut-slots', 'raise-lines', 'glue-roadbed', 'lay-turnouts'],
  });
}

/** Rails that end together on a straight end apart once it is bent: the inner one is cut back. */
function flexOf({ line, from, length: long, slip }: FlexWork): Sentence {
  const whole = say`${line} from ${length(from)} to ${length(from + long)}: ${length(long)}`;
  return slip < 0.05
    ? [...whole, '.']
    : [...whole, ...say`; one rail comes out ${length(slip)} longer than the other.`];
}

function trying({ trains }: LayWork): Draft {
  return singleDraft({
    chapter: 'track',
    id: 'try-track',
    title: 'Push a train over every line by hand',
    lines: [
      say`Both ways, through every turnout on both of its ways, slowly, before a wire is soldered or a stone glued. Log each place where it lifts, catches or comes off.`,
    ],
    says: trains.length === 0 ? [] : [say`${trains.join(', ')}.`],
    tools: ['track-gauge'],
    child: 'does with an adult',
    after: ['draw-lines', 'lay-turnouts', 'lay-track'],
  });
}
