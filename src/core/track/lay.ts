import type { Finding } from '../finding.ts';
import type { Polygon } from '../geometry/shapes.ts';
import type { Envelope, Request } from '../stock/part.ts';
import type { Fault } from '../units/problem.ts';
import { length, say } from '../units/say.ts';
import { ASSUMED_UPPER_DECK, assumedTrackHeight, type ClearHeight, clearHeight, type Levels } from './clearance.ts';
import { closingFindings } from './closing-findings.ts';
import { contacts } from './contacts.ts';
import { deckAreas } from './deck.ts';
import { edgeFindings } from './enlarge.ts';
import { halfWidthOf } from './half-width.ts';
import { flatTurnoutFindings, gradeFindings, meetingFindings } from './height-findings.ts';
import { curvePerPercent, type Heights, layHeights } from './heights.ts';
import { helixFindings } from './helix.ts';
import type { TrackInput } from './input.ts';
import type { LaidTurnout, Layout } from './laid.ts';
import { layOutLines } from './layout.ts';
import { type Extents, type LineWay, lineExtents } from './line.ts';
import { type MotorRoom, motorRooms } from './motors.ts';
import { passingFindings } from './passing.ts';
import { contactFindings, easementFindings, radiusFindings } from './plan-findings.ts';
import type { Profile } from './profile.ts';
import { gaugeOf } from './scale.ts';
import { type SetOutRow, setOut } from './set-out.ts';
import { type TrackSupplies, trackSupplies } from './supplies.ts';
import { tell } from './tell.ts';
import { assumedFindings, motorFindings, overlapFindings, unlaidFindings } from './turnout-findings.ts';

/** A line as laid: its way in plan, its extents and its heights. */
export type LaidLine = LineWay & { readonly extents: Extents; readonly profile: Profile };

/** The track as computed: notebook coordinates, mm, radians; heights of the roadbed's underside above deck top. */
export type TrackModel = {
  readonly gauge: number;
  readonly lines: readonly LaidLine[];
  readonly turnouts: readonly LaidTurnout[];
  readonly setOut: readonly SetOutRow[];
  readonly supplies: TrackSupplies;
  /** room of turnout motors, heights from the floor */
  readonly envelopes: readonly Envelope[];
  /** slots for throw bars */
  readonly requests: readonly Request[];
  /** from the roadbed's underside to the rail's top */
  readonly railHeight: number;
  /** roadbed's half width, or the sleepers' where there is none */
  readonly halfWidth: number;
};

const LEVEL: Profile = { breaks: [{ at: 0, height: 0 }], curves: [] };

/**
 * Lays the track: plan, heights, what it asks of the benchwork, how to set it out, and every finding. Faults are values
 * that no line can be laid with; the lines they stand in are left out of the model.
 */
export function layTrack(input: TrackInput): {
  readonly model: TrackModel;
  readonly findings: readonly Finding[];
  readonly faults: readonly Fault[];
} {
  const gauge = gaugeOf(input.scale);
  const plan = layOutLines(input);
  const perPercent = curvePerPercent(input, gauge);
  const heights = layHeights(input, plan, perPercent);
  const lines = plan.lines
    .filter((line) => line.elements.length > 0)
    .map(
      (line): LaidLine => ({ ...line, extents: lineExtents(line), profile: heights.profiles.get(line.id) ?? LEVEL }),
    );
  const layout = { ...plan, lines };
  const areas = deckAreas(input.ground);
  const rooms = motorRooms(layout, input.ground, gauge);
  const { clear, levels } = levelsOf(input, gauge);
  const model: TrackModel = {
    ...{ gauge, lines, turnouts: layout.turnouts, halfWidth: halfWidthOf(input) },
    setOut: setOut(layout, input.ground, areas),
    supplies: trackSupplies(input, layout, gauge),
    envelopes: rooms.map(({ envelope }) => envelope),
    requests: rooms.flatMap(({ slot }) => slot ?? []),
    railHeight: levels.roadbed + levels.track,
  };
  const findings = findingsOf(input, model, { layout, heights, areas, rooms, clear, levels, perPercent });
  return { model, findings, faults: layout.faults };
}

type Laid = {
  readonly layout: Layout;
  readonly heights: Heights;
  readonly areas: readonly Polygon[];
  readonly rooms: readonly MotorRoom[];
  readonly clear: ClearHeight;
  readonly levels: Levels;
  readonly perPercent: number;
};

function findingsOf(input: TrackInput, { gauge, lines, halfWidth }: TrackModel, laid: Laid): readonly Finding[] {
  const { layout, heights, areas, rooms, clear, levels, perPercent } = laid;
  const own = lines.flatMap((line) => [
    ...radiusFindings(line, input),
    ...easementFindings(line, input, gauge),
    ...gradeFindings(line, line.profile, { input, perPercent }),
    ...helixFindings(line, line.profile, { input, levels, clear }),
  ]);
  return [
    ...closingFindings(layout.closings),
    ...meetingFindings(heights.meetings, gauge),
    ...contactFindings(contacts(layout, gauge), heights.profiles, { levels, clear }),
    ...passingFindings(layout, { trains: input.trains, profiles: heights.profiles, levels, gauge }),
    ...edgeFindings(input, { lines, areas, half: halfWidth }),
    ...overlapFindings(layout.turnouts, gauge),
    ...unlaidFindings(input.turnouts, layout.turnouts),
    ...motorFindings(rooms),
    ...flatTurnoutFindings(layout, heights.profiles),
    ...own,
    ...assumedFindings(layout.turnouts),
    ...assumptions(input, gauge),
  ];
}

function levelsOf(
  { scale, rules, roadbed, flex }: TrackInput,
  gauge: number,
): { readonly clear: ClearHeight; readonly levels: Levels } {
  const clear = clearHeight(scale, rules.wire ? 'wire' : 'no wire');
  const levels = {
    clear: clear.height,
    deck: rules.upperDeck ?? ASSUMED_UPPER_DECK,
    roadbed: roadbed?.thickness ?? 0,
    track: flex.height ?? assumedTrackHeight(gauge),
  };
  return { clear, levels };
}

/** What is assumed of the track itself, said once. */
function assumptions({ flex, rules }: TrackInput, gauge: number): readonly Finding[] {
  const words = [
    ...(flex.yard === null ? say` lengths of flexible track of ${length(914.4)},` : []),
    ...(flex.height === null ? say` ${length(assumedTrackHeight(gauge))} from roadbed to rail top,` : []),
    ...(rules.upperDeck === null
      ? say` a deck of ${length(ASSUMED_UPPER_DECK)} under lines that cross over others,`
      : []),
  ];
  const last = words[words.length - 1];
  if (last === undefined) return [];
  const trimmed = typeof last === 'string' ? [...words.slice(0, -1), last.replace(/,$/, '')] : words;
  return [
    tell({
      rule: 'track-assumed',
      level: 'note',
      where: 'track',
      what: ['assumed:', ...trimmed],
      figure: null,
      limit: null,
      unit: 'mm',
      mend: say`write them under flex and rules in track.md`,
      source: 'common practice, no source',
    }),
  ];
}
