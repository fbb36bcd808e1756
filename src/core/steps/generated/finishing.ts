import type { Part } from '../../stock/part.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import type { Kit } from './assembling.ts';
import { type Draft, draft } from './draft.ts';
import { instanceIds, instances, joined, lengths } from './words.ts';

/** A coat of water-based finish is dry to the touch after some hours; common practice, no source. The tin decides. */
const DRY = 4 * 60;

/** Coats of sealer and the film each leaves when dry, mm; common practice, no source. */
const COATS = 2;
const COAT = 0.05;

function radii(part: Part): number[] {
  return part.features.flatMap((feature) => (feature.kind === 'roundover' ? [feature.radius] : []));
}

/** Steps of what is fitted, which come before edges are broken and sealed. */
function fitted({ frame: { id } }: Kit): string[] {
  return [`${id}-drawers-face`, `${id}-legs-on`, `${id}-shelves`];
}

/** What broken edges and coats do to the gap round a drawer's face. */
function gapLines({ parts }: Kit): Sentence[] {
  const faces = parts.filter((part) => part.role === 'drawer-face' && part.from !== undefined);
  const gap = faces.map((face) => gapRound(face, parts)).find((one) => one !== null);
  if (gap === undefined || gap === null) return [];
  const [edge, film] = [1, 2 * COATS * COAT];
  return [
    say`Broken by ${length(edge)} on both sides, the gap of ${length(gap)} round a drawer's face looks ${length(gap + 2 * edge)} wide, so no more than that. Two coats take ${length(film)} of it.`,
  ];
}

/** Half of what a face is smaller than the opening it fell out of, mm. */
function gapRound(face: Part, parts: readonly Part[]): number | null {
  const board = parts.find((part) => part.places.some(({ id }) => id === face.from));
  const first = face.places[0]?.id;
  const openings = board?.features.filter((feature) => feature.kind === 'opening') ?? [];
  const opening = openings.find((feature) => feature.for === first) ?? openings[0];
  return opening === undefined ? null : (opening.patch.x1 - opening.patch.x0 - face.blank.length) / 2;
}

function rounding(kit: Kit): Draft {
  const rounded = kit.parts.filter((part) => radii(part).length > 0);
  const asked = rounded.map((part) => joined(say`${instances([part])}: radius `, lengths(radii(part)), say`.`));
  const lines = [
    say`Every edge a hand or a child's head meets: break it by ${length(1)} to ${length(3)}.`,
    ...asked,
    ...gapLines(kit),
  ];
  const { id } = kit.frame;
  return draft({
    id: `${id}-roundover`,
    title: `Round the edges of ${id}`,
    work: [{ kind: 'machining', noun: 'roundover', makes: instanceIds(rounded), lines }],
    tools: ['sandpaper'],
    child: 'does alone',
    after: [`${id}-trim`, `${id}-square`, `${id}-flanges`, ...fitted(kit)],
  });
}

/** What sealer must not touch on drawers and legs. */
function drawerLines({ parts }: Kit): Sentence[] {
  const has = (role: string) => parts.some((part) => part.role.startsWith(role));
  return [
    ...(has('drawer')
      ? [
          say`Boxes were tried in their holes before this; take them off their slides, and keep sealer off spacers and slides.`,
        ]
      : []),
    ...(has('leg')
      ? [say`Mask the faces where legs are bolted: a leg that is painted in does not come off for the move.`]
      : []),
  ];
}

function sealing(kit: Kit): Draft {
  const { id } = kit.frame;
  const lines = [
    say`Both faces of the deck and all edges, the same number of coats on each face so that it stays flat. Leave bare what will still be glued.`,
    ...drawerLines(kit),
  ];
  return draft({
    id: `${id}-seal`,
    title: `Seal ${id}`,
    work: [{ kind: 'machining', noun: 'seal', makes: instanceIds(kit.parts), lines }],
    tools: ['brush', 'sealer'],
    wait: DRY,
    child: 'does with an adult',
    after: [`${id}-roundover`],
  });
}

/** Edges for hands, then seal; screws and glue come before both. */
export function finishing(kit: Kit): Draft[] {
  return kit.parts.length === 0 ? [] : [rounding(kit), sealing(kit)];
}
