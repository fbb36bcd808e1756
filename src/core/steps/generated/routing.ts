import type { Feature, Part } from '../../stock/part.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import { type Draft, draft, type Work } from './draft.ts';
import { slotTest } from './slot.ts';
import { grouped, instanceIds, instances, joined, lengths, tenth } from './words.ts';

type Pocket = Extract<Feature, { kind: 'dado' | 'stopped-dado' | 'rabbet' | 'groove' }>;
type Notch = Extract<Feature, { kind: 'notch' }>;
type Cut<F> = { readonly part: Part; readonly feature: F };

function isPocket(feature: Feature): feature is Pocket {
  return ['dado', 'stopped-dado', 'rabbet', 'groove'].includes(feature.kind);
}

function cutsOf<F extends Feature>(parts: readonly Part[], wanted: (feature: Feature) => feature is F): Cut<F>[] {
  return parts.flatMap((part) => part.features.filter(wanted).map((feature) => ({ part, feature })));
}

function slotsOf(parts: readonly Part[]): Cut<Notch>[] {
  return cutsOf(parts, slotTest(parts));
}

function narrow({ patch }: Pocket | Notch): number {
  return Math.min(patch.x1 - patch.x0, patch.y1 - patch.y0);
}

function tall({ patch }: Notch): number {
  return patch.y1 - patch.y0;
}

function distinct(parts: readonly Part[]): Part[] {
  return [...new Set(parts)];
}

/** One router setting: all pockets of one kind, depth and width, with where each begins along its part. */
function pocketLines(cuts: readonly Cut<Pocket>[]): Sentence[] {
  const first = cuts[0]?.feature;
  if (first === undefined) return [];
  const lead = say`${first.kind} ${length(first.depth)} deep and ${length(narrow(first))} wide.`;
  return [lead, ...grouped(cuts, (cut) => cut.part.id).map(pocketPlaces)];
}

function pocketPlaces(cuts: readonly Cut<Pocket>[]): Sentence {
  const part = cuts[0]?.part;
  const starts = cuts.map((cut) => cut.feature.patch.x0);
  const side = cuts[0]?.feature.side ?? 'face';
  return joined(
    say`${part === undefined ? '' : instances([part])}: on the ${side}, beginning at `,
    lengths(starts),
    say` from the left end.`,
  );
}

function pocketWork(cuts: readonly Cut<Pocket>[], noun: string): Work {
  const settings = grouped(cuts, ({ feature }) => `${feature.kind} ${tenth(feature.depth)} ${tenth(narrow(feature))}`);
  return {
    kind: 'machining',
    noun,
    makes: instanceIds(distinct(cuts.map((cut) => cut.part))),
    lines: settings.flatMap(pocketLines),
  };
}

/** Rabbets, dados and grooves, by router setting. */
function pocketing(parts: readonly Part[]): Draft[] {
  const cuts = cutsOf(parts, isPocket);
  if (cuts.length === 0) return [];
  const lead = say`Same edge against the guide for both mates. Set the depth in scrap, then cut every pocket of one setting before the next.`;
  return [
    draft({
      id: 'rout',
      title: 'Rout rabbets and dados',
      lines: [lead],
      work: grouped(cuts, ({ feature }) => feature.kind.replace('stopped-', '')).map((same) =>
        pocketWork(same, same[0]?.feature.kind.replace('stopped-', '') ?? ''),
      ),
      tools: ['router', 'straightedge', 'clamps'],
      child: 'away',
      after: ['crosscut', 'test-lap', 'mark'],
    }),
  ];
}

function gangLine(cuts: readonly Cut<Notch>[]): Sentence {
  const part = cuts[0]?.part;
  if (part === undefined) return [];
  const edge = cuts[0]?.feature.edge ?? 'top';
  const gang = part.places.length > 1 ? 'clamped side by side, left ends flush, in one pass: ' : '';
  const starts = lengths(cuts.map((cut) => cut.feature.patch.x0));
  return joined(
    say`${gang}${instances([part])}: from the ${edge} edge, beginning at `,
    starts,
    say` from the left end.`,
  );
}

function slotLines(cuts: readonly Cut<Notch>[]): Sentence[] {
  const first = cuts[0]?.feature;
  if (first === undefined) return [];
  const lead = say`Slots ${length(narrowSlot(first))} wide and ${length(tall(first))} deep.`;
  return [lead, ...grouped(cuts, ({ part, feature }) => `${part.id} ${feature.edge}`).map(gangLine)];
}

function narrowSlot({ patch }: Notch): number {
  return patch.x1 - patch.x0;
}

/** Slots of laps, mates ganged so that they share their errors. */
function slotting(parts: readonly Part[]): Draft[] {
  const cuts = slotsOf(parts);
  if (cuts.length === 0) return [];
  const settings = grouped(cuts, ({ feature }) => `${tenth(narrowSlot(feature))} ${tenth(tall(feature))}`);
  return [
    draft({
      id: 'slots',
      title: 'Cut the slots of the laps',
      work: [
        {
          kind: 'machining',
          noun: 'lap',
          makes: instanceIds(distinct(cuts.map((cut) => cut.part))),
          lines: settings.flatMap(slotLines),
        },
      ],
      tools: ['router', 'straightedge', 'clamps'],
      child: 'away',
      after: ['crosscut', 'test-lap', 'mark'],
    }),
  ];
}

function testLine(parts: readonly Part[]): Sentence {
  const slot = slotsOf(parts)[0]?.feature;
  const pocket = cutsOf(parts, isPocket)[0]?.feature;
  if (slot !== undefined) {
    return say`Two offcuts of the same sheet, each with one slot ${length(narrowSlot(slot))} wide and ${length(tall(slot))} deep. They push together by hand and hold when turned over.`;
  }
  if (pocket === undefined) return [];
  return say`One ${pocket.kind} ${length(pocket.depth)} deep and ${length(narrow(pocket))} wide in an offcut of the same sheet. Its mate pushes in by hand.`;
}

/** The settings tried in scrap before the batch. */
function testing(parts: readonly Part[]): Draft[] {
  const line = testLine(parts);
  if (line.length === 0) return [];
  return [
    draft({
      id: 'test-lap',
      title: 'Try the settings in scrap',
      lines: [line, say`Write the fit in the log before the batch is cut.`],
      work: [{ kind: 'machining', noun: 'test-lap', makes: [], lines: [] }],
      tools: ['router', 'caliper'],
      child: 'away',
      after: ['rip'],
    }),
  ];
}

/** A test in scrap, then pockets, then slots. */
export function routing(parts: readonly Part[]): Draft[] {
  return [...testing(parts), ...pocketing(parts), ...slotting(parts)];
}
