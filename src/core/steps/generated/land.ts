import { length, type Sentence, say } from '../../units/say.ts';
import { type Draft, singleDraft } from './draft.ts';
import { landWater, type WaterWork } from './water.ts';
import { counted } from './words.ts';

/** A profile board, by the label on its wood; one that lifts off is the way into what a step closes with it. */
export type BoardWork = { readonly id: string; readonly label: string; readonly lifts: boolean };

/** What the steps of the scenery follow from. */
export type LandWork = {
  /** foam layers from the bottom: the pieces each is cut into, and its heights over the deck */
  readonly layers: readonly {
    readonly id: string;
    readonly pieces: readonly string[];
    readonly from: number;
    readonly to: number;
    /** what tunnels take out of it */
    readonly room: readonly {
      readonly tunnel: string;
      readonly takes: 'all' | 'top' | 'underside';
      readonly deep: number;
    }[];
  }[];
  readonly boards: readonly BoardWork[];
  readonly waters: readonly WaterWork[];
  /** stock of the covers, in the order they are laid */
  readonly covers: readonly string[];
  readonly tunnels: readonly string[];
  readonly lines: boolean;
  readonly ballast: string | null;
  readonly trees: number;
  /** written steps of the track and the wiring, by full id */
  readonly before: { readonly track: readonly string[]; readonly wiring: readonly string[] };
};

/** Glue, plaster and covers are left alone for a day; common practice, no source. Minutes. */
const DAY = 24 * 60;

/** The steps of the scenery in order: track proved, boards, foam, masks, plaster, covers, water, ballast, trees. */
export function landDrafts(work: LandWork): Draft[] {
  return [
    ...(work.tunnels.length > 0 ? [prove(work)] : []),
    ...(work.boards.length > 0 ? [boards(work)] : []),
    ...(work.layers.length > 0 ? [cutting(work), stacking(work), carving()] : []),
    ...masking(work),
    ...covering(work),
    ...work.waters.flatMap((water) => landWater(water)),
    ...(work.ballast === null || !work.lines ? [] : [ballast(work)]),
    ...(work.trees > 0 ? [trees(work)] : []),
  ];
}

function prove({ tunnels, before }: LandWork): Draft {
  return singleDraft({
    chapter: 'scenery',
    id: 'prove-tunnel-track',
    title: 'Prove the track before a hill covers it',
    says: [
      say`${tunnels.join(', ')}: run every vehicle through both ways, twenty times without one coming off, and log it as a trial.`,
      say`Photograph the track and its feeders, and decide how a hand gets in, before the first layer goes on.`,
    ],
    deeds: ['power-supply'],
    child: 'does with an adult',
    after: [...before.track, ...before.wiring],
  });
}

function boards({ boards: made }: LandWork): Draft {
  return singleDraft({
    chapter: 'scenery',
    id: 'profile-boards',
    title: 'Saw the profile boards and stand them on the deck',
    says: [
      say`${labelsOf(made)}: set the heights out along the lower edge, join them with a bent lath, saw outside the line and sand to it.`,
      ...standing(made),
    ],
    makes: made.map(({ id }) => id),
    noun: 'profile-board',
    tools: ['jigsaw', 'sandpaper', 'clamp', 'drill'],
    deeds: ['glue'],
    child: 'away',
    wait: DAY,
  });
}

function labelsOf(boards: readonly BoardWork[]): string {
  return boards.map(({ label }) => label).join(', ');
}

/** How boards are held: what closes the way to a hidden space comes off, and everything else is glued; common practice, no source. */
function standing(made: readonly BoardWork[]): Sentence[] {
  const [loose, fast] = [made.filter(({ lifts }) => lifts), made.filter(({ lifts }) => !lifts)];
  return [
    ...(fast.length === 0
      ? []
      : [say`Glue and screw ${labelsOf(fast)} from under the deck, the outer face flush with the frame.`]),
    ...(loose.length === 0
      ? []
      : [
          say`No glue and no screw under ${labelsOf(loose)}, which has to lift straight up: glue dowels of ${length(6)} into the lower edge, one ${length(40)} from each end, into holes of ${length(6.5)} through the deck, the outer face flush with the frame. Foam and plaster stop at the inner face, with baking paper between.`,
        ]),
  ];
}

type LayerWork = LandWork['layers'][number];

function cutting({ layers }: LandWork): Draft {
  const says = layers.flatMap((layer) => [
    say`${layer.id}: ${counted(layer.pieces.length, 'piece')}, from ${length(layer.from)} to ${length(layer.to)} over the deck.`,
    ...layer.room.flatMap((room) => tunnelled(layer, room)),
  ]);
  return singleDraft({
    chapter: 'scenery',
    id: 'cut-layers',
    title: 'Cut the layers of foam',
    lines: [
      say`Only polystyrene under a hot wire, with a window open; never polyurethane or PIR, whose fume is poison. A long knife in several strokes needs no window.`,
      say`Prick the pins' places through the template and write the layer's name on top.`,
    ],
    says,
    makes: layers.flatMap(({ pieces }) => pieces),
    noun: 'layer',
    tools: ['hot-wire', 'craft-knife'],
    child: 'away',
    after: ['prove-tunnel-track', 'profile-boards'],
  });
}

/** What a tunnel takes of a layer beyond its template's outline. */
function tunnelled({ id }: LayerWork, { tunnel, takes, deep }: LayerWork['room'][number]) {
  if (takes === 'all') return [];
  const side = takes === 'top' ? 'top' : 'underside';
  return [
    say`${id}: carve ${length(deep)} off its ${side} along ${tunnel}, between the lines on its template, before it is glued.`,
  ];
}

function stacking({ layers }: LandWork): Draft {
  return singleDraft({
    chapter: 'scenery',
    id: 'stack-layers',
    title: 'Pin and glue the layers from the bottom up',
    says: [
      say`${counted(layers.length, 'layer')}: try the stack dry on its pins first.`,
      say`Use a glue made for polystyrene. Solvent, spray and most contact glues melt foam; white glue shut in between two sheets stays wet for weeks.`,
      say`Weigh the stack down and leave it alone for a day.`,
    ],
    makes: layers.flatMap(({ pieces }) => pieces),
    tools: ['weights'],
    deeds: ['glue'],
    child: 'does with an adult',
    wait: DAY,
    after: ['cut-layers'],
  });
}

function carving(): Draft {
  return singleDraft({
    chapter: 'scenery',
    id: 'carve-hill',
    title: 'Carve the steps down to the slope',
    says: [
      say`Carve each step from its top edge to the line of the layer above; nothing is added, the templates are the largest outlines.`,
      say`Rasp and sand with the dust drawn off; foam dust clings and gets into locomotives, so cover the track.`,
    ],
    tools: ['craft-knife', 'sandpaper'],
    after: ['stack-layers'],
  });
}

/** Rails are masked before anything wet comes near them. */
function masking({ lines, covers, before }: LandWork): Draft[] {
  if (!lines || covers.length === 0) return [];
  return [
    singleDraft({
      chapter: 'scenery',
      id: 'mask-rails',
      title: 'Mask rails, points and machines',
      says: [say`Tape over every rail head, points and uncoupler, and a sheet over the rest of the table.`],
      tools: ['tape'],
      child: 'does alone',
      after: ['carve-hill', ...before.track],
    }),
  ];
}

function covering({ covers }: LandWork): Draft[] {
  const plaster = covers.filter((cover) => cover.includes('plaster'));
  const rest = covers.filter((cover) => !cover.includes('plaster'));
  const shell = plaster.map(() =>
    singleDraft({
      chapter: 'scenery',
      id: 'plaster',
      title: 'Lay the plaster cloth',
      says: [
        say`Strips dipped and laid with a quarter of each over the one beside it, then a second layer across the first. It warms as it sets.`,
      ],
      tools: ['plaster-cloth'],
      child: 'does with an adult',
      wait: DAY,
      after: ['mask-rails', 'carve-hill'],
    }),
  );
  const ground = singleDraft({
    chapter: 'scenery',
    id: 'cover-ground',
    title: 'Paint and cover the ground',
    says: [say`In this order: ${rest.join(', ')}. Each on wet paint or thinned white glue, and vacuumed once dry.`],
    tools: ['brush'],
    deeds: ['pva'],
    child: 'does with an adult',
    wait: DAY,
    after: ['plaster', 'mask-rails', 'carve-hill'],
  });
  return [...shell.slice(0, 1), ...(rest.length > 0 ? [ground] : [])];
}

function ballast({ ballast: stock, before }: LandWork): Draft {
  return singleDraft({
    chapter: 'scenery',
    id: 'ballast',
    title: 'Ballast the track',
    says: [
      say`Not before every line has had its trials and the supply trips at the far end of every length of rail: glued ballast hides both.`,
      say`${stock ?? ''}: brush it below the rail heads and off the points, wet it, then drip thinned glue from between the rails.`,
    ],
    tools: ['brush'],
    deeds: ['pva'],
    child: 'does with an adult',
    wait: DAY,
    after: ['cover-ground', ...before.track, ...before.wiring],
  });
}

function trees({ trees: count }: LandWork): Draft {
  return singleDraft({
    chapter: 'scenery',
    id: 'plant-trees',
    title: 'Plant the trees',
    says: [say`${counted(count, 'tree')}, the tallest behind. Whatever stands over a hand's way in lifts out.`],
    child: 'does alone',
    after: ['cover-ground', 'ballast'],
  });
}
