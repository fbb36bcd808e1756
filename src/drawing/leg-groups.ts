import { extentOfSeen, type Seen } from './scene.ts';

/** A leg built of layers has more pieces than a view has room for labels: those that stand together share one. */
export function byLeg(pieces: readonly Seen[]): readonly (readonly Seen[])[] {
  let groups: readonly (readonly Seen[])[] = [];
  for (const piece of pieces) {
    const own = groups.filter((group) => isLeg(piece) && group.some((one) => sameLeg(one, piece)));
    const [first] = own;
    if (first === undefined) groups = [...groups, [piece]];
    else
      groups = groups.flatMap((group) =>
        group === first ? [[...own.flat(), piece]] : own.includes(group) ? [] : [group],
      );
  }
  return groups;
}

/** A leg's first and last label; one piece's own. */
export function groupLabel(group: readonly Seen[]): string {
  const labels = group.map(({ label }) => label).toSorted((a, b) => (a < b ? -1 : 1));
  const [first = '', last] = [labels[0], labels.at(-1)];
  return labels.length <= 2 ? labels.join(', ') : `${first} to ${last}`;
}

export function isLeg({ role }: Seen): boolean {
  return role.startsWith('leg');
}

function sameLeg(a: Seen, b: Seen): boolean {
  return isLeg(a) && stem(a) === stem(b) && touch(a, b);
}

function stem({ id }: Seen): string {
  return id.slice(0, id.lastIndexOf('.'));
}

/** The feet of one leg may stand apart; only what meets on paper is named as one. */
function touch(a: Seen, b: Seen): boolean {
  const [one, two] = [extentOfSeen(a), extentOfSeen(b)];
  const meets = (axis: 0 | 1) => one.low[axis] <= two.high[axis] + 0.1 && two.low[axis] <= one.high[axis] + 0.1;
  return meets(0) && meets(1);
}
