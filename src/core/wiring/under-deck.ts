/** Room kept free below the frame for wires that hang; common practice, no source. mm */
export const WIRE_ZONE = 50;

/** The highest a drawer cabinet may reach in a space measured to the frame: the wires hang in the rest. Same unit throughout. */
export function cabinetTop(space: number, wires: number): number {
  return space - wires;
}

/** Height of one of `drawers` drawers in a cabinet of this top, its top and bottom panels taken off. */
export function drawerPitch(
  top: number,
  { panels, drawers }: { readonly panels: number; readonly drawers: number },
): number {
  return (top - panels) / drawers;
}

/** What stands between the track's height and the top of what is under it. Same unit throughout. */
export type Underneath = {
  readonly track: number;
  readonly below: number;
  readonly deck: number;
  /** motors and other gear that hangs from the deck */
  readonly gear: number;
};

/** Room left for a hand between the gear under a deck and what is under that. */
export function handRoom({ track, below, deck, gear }: Underneath): number {
  return track - below - deck - gear;
}
