/** Things that are bought for the wiring by the piece. */
export type SmallPart = {
  readonly kind:
    | 'supply'
    | 'breaker'
    | 'unit'
    | 'motor'
    | 'thrower'
    | 'load'
    | 'diode'
    | 'resistor'
    | 'rectifier'
    | 'fuse'
    | 'plug'
    | 'joint'
    | 'clip'
    | 'grommet';
  readonly name: string;
  readonly quantity: number;
  /** loads, districts, units or holes it is for; empty for what is for the whole layout */
  readonly of: readonly string[];
};
