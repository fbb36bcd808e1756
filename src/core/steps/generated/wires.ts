import { length, type Sentence, say } from '../../units/say.ts';
import { type Draft, singleDraft } from './draft.ts';

/** A pair of wires as the steps need it: its numbers, colours, ends, and the length of one wire; mm. */
export type PairWork = {
  readonly labels: string;
  readonly colours: string;
  readonly from: Sentence;
  readonly to: Sentence;
  readonly note?: Sentence | undefined;
  readonly length: number;
  readonly stock: string;
};

/** A reverser or a switch as the steps need it: its place from its bench's front left corner, mm. */
export type UnitWork = {
  readonly id: string;
  readonly what: string;
  readonly for: string;
  readonly bench: string;
  readonly at: readonly [number, number];
};

/** What the steps of the wiring follow from. */
export type WireWork = {
  readonly bus: readonly PairWork[];
  /** what is screwed up under the deck before its wires, and where: its name, what it is, along and across the bench */
  readonly units: readonly UnitWork[];
  readonly tails: readonly PairWork[];
  /** wires are clipped up at least this often, mm */
  readonly clipEvery: number;
  /** its holes through boards, each with what is written beside it; diameter in mm */
  readonly holes: readonly { readonly tag: string; readonly part: string; readonly diameter: number }[];
  /** holes of thin wires down through boards of the deck, from their left end and front edge; mm */
  readonly deckHoles: readonly {
    readonly label: string;
    readonly part: string;
    readonly at: readonly [number, number];
    readonly diameter: number;
  }[];
  readonly cuts: readonly {
    readonly tag: string;
    readonly line: string;
    readonly at: number;
    readonly rails: 'both' | 'frog';
  }[];
  /** tests of the cuts, of all wires without power, then those with it */
  readonly apart: readonly Sentence[];
  readonly dead: readonly Sentence[];
  readonly live: readonly Sentence[];
  readonly supply: { readonly volts: number; readonly tripsAt: number };
  /** steps before it, by full id: the last of each bench, and the written ones of the track */
  readonly before: { readonly benchwork: readonly string[]; readonly track: readonly string[] };
};

/** The steps of the wiring in order: bus, cuts, feeders, tests without power, and only then the supply. */
export function wireDrafts(work: WireWork): Draft[] {
  return [
    ...(work.bus.length > 0 ? [running(work)] : []),
    ...(work.units.length > 0 ? [mounting(work)] : []),
    ...(work.cuts.length > 0 ? [cutting(work)] : []),
    ...(work.apart.length > 0 ? [testingCuts(work)] : []),
    ...(work.tails.length > 0 ? [soldering(work)] : []),
    ...(work.dead.length > 0 ? [testing(work)] : []),
    ...(work.bus.length > 0 ? [connecting(work)] : []),
  ];
}

function told(pair: PairWork): Sentence {
  const { colours, from, labels, note, stock, to } = pair;
  const more = note === undefined ? [] : ['; ', ...note];
  return [
    ...say`${labels}, ${colours}: ${length(pair.length)} each of ${stock}, from `,
    ...from,
    ' to ',
    ...to,
    ...more,
    '.',
  ];
}

function running({ bus, holes, before, clipEvery }: WireWork): Draft {
  return singleDraft({
    chapter: 'wiring',
    id: 'run-bus',
    title: 'Run the bus under the deck',
    lines: [
      say`Round every hole's edges or push a grommet in, label both ends before pulling, and clip the wires at least every ${length(clipEvery)} so that none hangs below the frame.`,
      say`The letters a and b are the code, a colour helps; never take the mains' colours: brown, blue, or green with yellow. Along and across are from a bench's front left corner, seen from above.`,
    ],
    says: [
      ...holes.map(({ diameter, part, tag }) => say`Hole ${tag}, ${length(diameter)} across, through ${part}.`),
      ...bus.map(told),
    ],
    tools: [...(holes.length > 0 ? ['drill'] : []), 'wire-cutters', 'wire-strippers'],
    child: 'does with an adult',
    after: before.benchwork,
  });
}

function mounting({ units, before }: WireWork): Draft {
  return singleDraft({
    chapter: 'wiring',
    id: 'mount-units',
    title: 'Screw up the reversers and switches',
    lines: [
      say`Bought, closed and listed for your control. What they feed hangs on the pair that comes out of them and on nothing else: not one of its wires goes to another bus.`,
    ],
    says: units.map(
      ({ at, bench, for: of, id, what }) =>
        say`${id}, ${what}, for ${of}: ${length(at[0])} along and ${length(at[1])} across from the front left corner of ${bench}, under its deck.`,
    ),
    tools: ['screwdriver', 'wire-strippers'],
    child: 'does with an adult',
    after: before.benchwork,
  });
}

function cutting({ cuts, before }: WireWork): Draft {
  return singleDraft({
    chapter: 'wiring',
    id: 'cut-rails',
    title: 'Cut the rails where they must not meet',
    lines: [
      say`Both rails unless it says one, straight across; a drop of glue or a scrap of plastic keeps the cut open.`,
    ],
    says: cuts.map(({ line, at, rails, tag }) =>
      rails === 'both'
        ? say`Cut ${tag}: ${line} at ${length(at)}.`
        : say`Cut ${tag}: ${line} at ${length(at)}, only the rail that comes from the frog.`,
    ),
    tools: ['razor-saw'],
    child: 'watches',
    after: before.track,
  });
}

/** A cut is proved before its rails are joined to anything but each other. */
function testingCuts({ apart }: WireWork): Draft {
  return singleDraft({
    chapter: 'wiring',
    id: 'test-cuts',
    title: 'Test every cut before a feeder is joined to the bus',
    lines: [say`No feeder is on the bus yet, and no engine or coach on the rails. Measure with the ohmmeter.`],
    says: apart,
    tools: ['multimeter'],
    child: 'does with an adult',
    after: ['cut-rails'],
  });
}

function soldering({ deckHoles, tails, before }: WireWork): Draft {
  return singleDraft({
    chapter: 'wiring',
    id: 'solder-feeders',
    title: 'Solder the feeders and join them to the bus',
    lines: [
      say`Left and right are seen along each line from its start; where a line joins another the same rail keeps the same wire. The iron comes to the rail's outer side and leaves within three seconds.`,
    ],
    says: [
      ...deckHoles.map(
        ({ at, diameter, label, part }) =>
          say`Hole ${label}, ${length(diameter)} across, down through ${part}: ${length(at[0])} from its left end, ${length(at[1])} from its front edge.`,
      ),
      ...tails.map(told),
    ],
    tools: ['soldering-iron', 'drill', 'wire-strippers'],
    child: 'watches',
    after: ['run-bus', 'mount-units', 'cut-rails', 'test-cuts', ...before.track],
  });
}

function testing({ dead }: WireWork): Draft {
  return singleDraft({
    chapter: 'wiring',
    id: 'test-wires',
    title: 'Test every wire before there is any power',
    lines: [say`The supply is off and unplugged. Measure with the ohmmeter and tick each place on the test sheet.`],
    says: dead,
    tools: ['multimeter'],
    child: 'does with an adult',
    after: ['solder-feeders', 'cut-rails', 'run-bus'],
  });
}

function connecting({ live, supply }: WireWork): Draft {
  return singleDraft({
    chapter: 'wiring',
    id: 'connect-supply',
    title: 'Connect the supply and short every length of rail',
    lines: [
      say`A bought, listed supply, closed as it came: ${String(supply.volts)} V, switching off at ${String(supply.tripsAt)} A. Nothing on the mains is made or mended at home; your local code and a licensed electrician come first.`,
      say`Only its low-voltage lead comes up to the table, with a plug that fits no socket of the house.`,
    ],
    says: live,
    deeds: ['power-supply'],
    tools: ['multimeter'],
    child: 'watches',
    after: ['test-wires', 'solder-feeders', 'run-bus'],
  });
}
