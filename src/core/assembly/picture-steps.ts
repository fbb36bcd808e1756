import type { Placing, PoseName } from './assembly.ts';

/** Moves that one picture shows: pieces of one family that go in alike, one after the other. */
export type PictureStep = {
  readonly placings: readonly Placing[];
  readonly parts: readonly string[];
  /** how the frame lies, and whether it is turned over first */
  readonly frame: PoseName;
  readonly turn: boolean;
  /** the sub-assembly that is built here, or null for the bench */
  readonly within: string | null;
  /** what stands already, of the bench or of the sub-assembly */
  readonly standing: readonly string[];
};

/** The order of a pose as pictures: equal families in a row make one, a turn always begins another. */
export function pictureSteps(order: readonly Placing[]): readonly PictureStep[] {
  const runs: Placing[][] = [];
  for (const placing of order) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (run !== undefined && before !== undefined && alike(before, placing)) run.push(placing);
    else runs.push([placing]);
  }
  return runs.map((placings, i) => stepOf(placings, runs.slice(0, i).flat()));
}

/** One sub-assembly is one picture, and so are the legs or drawers that go in one after the other. */
function alike(a: Placing, b: Placing): boolean {
  if (b.turn || a.within !== b.within) return false;
  return a.within !== null || (isOfOneKind(a, b) && (a.parts.length === 1 || PIECE_OF.test(a.parts[0] ?? '')));
}

/** What a piece of a drawer, leg or shelf is, whichever of them it belongs to: `drawer.front-2.face` is a face. */
const PIECE_OF = /(^|\.)(drawer|leg|shelf)\.[^.]+\.([a-z]+)/;

/** Whether two moves bring in the same thing: pieces of one family, or the one drawer or leg after the other. */
export function isOfOneKind(a: Placing, b: Placing): boolean {
  return a.within === b.within && (a.parts.length === 1) === (b.parts.length === 1) && kind(a) === kind(b);
}

function kind(placing: Placing): string {
  const found = PIECE_OF.exec(placing.parts[0] ?? '');
  if (placing.within !== null || found === null) return family(placing);
  return placing.parts.length > 1 ? `${found[2]}` : `${found[2]} ${found[3]}`;
}

/** `strut.across-2` is of the family `strut.across`, `flange.along-1` and `flange.across-1-2` of `flange`. */
function family({ parts }: Placing): string {
  const [id = ''] = parts;
  if (id.includes('flange.')) return id.slice(0, id.indexOf('flange.') + 6);
  const cut = id.search(/[.-]\d+(-\d+)?$/);
  return cut < 0 ? id.slice(0, Math.max(0, id.lastIndexOf('.'))) : id.slice(0, cut);
}

function stepOf(placings: readonly Placing[], before: readonly Placing[]): PictureStep {
  const [first] = placings;
  const within = first?.within ?? null;
  return {
    placings,
    parts: placings.flatMap(({ parts }) => parts),
    frame: first?.frame ?? 'upright',
    turn: first?.turn ?? false,
    within,
    standing: before.filter((one) => one.within === within).flatMap(({ parts }) => parts),
  };
}
