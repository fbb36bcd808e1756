import type { Part } from '../../stock/part.ts';
import { length, say } from '../../units/say.ts';
import type { Kit } from './assembling.ts';
import { type Draft, draft } from './draft.ts';
import { instanceIds, instances, joined, lengths } from './words.ts';

/** A coat of water-based finish is dry to the touch after some hours; common practice, no source. The tin decides. */
const DRY = 4 * 60;

function radii(part: Part): number[] {
  return part.features.flatMap((feature) => (feature.kind === 'roundover' ? [feature.radius] : []));
}

function rounding(kit: Kit): Draft {
  const rounded = kit.parts.filter((part) => radii(part).length > 0);
  const asked = rounded.map((part) => joined(say`${instances([part])}: radius `, lengths(radii(part)), say`.`));
  const lines = [say`Every edge a hand or a child's head meets: break it by ${length(1)} to ${length(3)}.`, ...asked];
  const { id } = kit.frame;
  return draft({
    id: `${id}-roundover`,
    title: `Round the edges of ${id}`,
    work: [{ kind: 'machining', noun: 'roundover', makes: instanceIds(rounded), lines }],
    tools: ['sandpaper'],
    child: 'does alone',
    after: [`${id}-trim`, `${id}-square`, `${id}-flanges`],
  });
}

function sealing(kit: Kit): Draft {
  const { id } = kit.frame;
  const lines = [
    say`Both faces of the deck and all edges, the same number of coats on each face so that it stays flat. Leave bare what will still be glued.`,
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
