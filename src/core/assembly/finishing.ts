import type { Finding } from '../finding.ts';
import type { Joint, Part } from '../stock/part.ts';
import { length, type Sentence, say } from '../units/say.ts';
import type { Workshop } from './workshop.ts';

/** What is finished: the parts, the joints that must stay bare, and the film of the workshop's coats. */
export type Finished = {
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly workshop: Workshop;
};

/** Parts a hand takes hold of when the bench is carried. */
const HELD: readonly string[] = ['side', 'end'];

/** What is written on the wood of every piece of a part. */
function labels({ places }: Part): readonly string[] {
  return places.map(({ label }) => label);
}

/** What is rounded, sealed and left bare before the glue, and what is sealed and left to cure after it. */
export function finishingOf({ parts, joints, workshop }: Finished): {
  readonly before: readonly Sentence[];
  readonly after: readonly Sentence[];
} {
  const held = parts.filter(({ role }) => HELD.includes(role)).flatMap(labels);
  const glued = joints.filter((joint) => joint.held === 'glue').length;
  const trimmed = parts.filter(({ features }) => features.some(({ kind }) => kind === 'trim'));
  const film = 2 * workshop.film * workshop.coats;
  const before = [
    ...(held.length > 0
      ? [say`Round the lower edges of ${held.join(', ')}, where hands lift; not where a mate seats.`]
      : []),
    say`Seal both faces of a sheet alike, or it cups towards the bare one; ${String(workshop.coats)} coats.`,
    ...(glued > 0
      ? [say`Tape off ${String(glued)} glue faces and both their mates: glue holds on bare wood only.`]
      : []),
    say`A sealed mate is ${length(film)} thicker, which comes off its clearance; keep film out of slots and dados.`,
  ];
  const after = [
    ...(trimmed.length > 0 ? [say`Trim ${trimmed.flatMap(labels).join(', ')} flush, then seal the fresh edges.`] : []),
    say`No load for 24 h after the last clamp comes off, and no scenery before the sealer has stopped smelling.`,
  ];
  return { before, after };
}

/** Slots that a finish on the mate would close: film on both its faces against the least clearance of a glued joint. */
export function filmFinding({ joints, workshop }: Finished): readonly Finding[] {
  const film = 2 * workshop.film * workshop.coats;
  const tight = joints
    .filter(({ kind }) => kind === 'lap' || kind === 'dado' || kind === 'groove')
    .sort((a, b) => a.clearance - b.clearance)[0];
  if (tight === undefined || tight.clearance >= film) return [];
  return [
    {
      rule: 'film-fills-clearance',
      level: 'note',
      where: tight.id,
      chapter: 'benchwork',
      what: say`${String(workshop.coats)} coats on both faces are ${length(film)}, and the slot has ${length(tight.clearance)} to spare`,
      figure: tight.clearance,
      limit: film,
      unit: 'mm',
      mend: say`leave the mates bare where they enter, or seal after the dry fit`,
      source: 'film of one coat assumed, from memory',
      accepted: null,
    },
  ];
}
