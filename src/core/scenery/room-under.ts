/** Room under a bridge as it is and as it should be, and the ways to find more; mm, slopes as ratios. */
export type RoomAsk = {
  readonly has: number;
  readonly needs: number;
  /** steepest the line may climb */
  readonly grade: number;
  readonly foam: number;
};

export type RoomUnder = {
  readonly short: number;
  /** what the line must be raised by, and how far it climbs on each side, vertical curves left out */
  readonly raise: { readonly rise: number; readonly run: number };
  /** layers of foam to put under everything but the cut */
  readonly layers: number;
};

/** How much room is missing under a bridge, and what raising the line or lowering the ground would take. */
export function roomUnder({ has, needs, grade, foam }: RoomAsk): RoomUnder {
  const short = Math.max(0, needs - has);
  return { short, raise: { rise: short, run: short / grade }, layers: Math.ceil(short / foam - 1e-9) };
}
