/**
 * The three faces of a thickness once the notebook is known: `mean` sets dados and lengths, `thickest` sets slots,
 * and both are the listed figures while nothing was measured. mm.
 */
export type KnownThickness = {
  readonly stock: string;
  readonly nominal: number;
  readonly listed: number;
  readonly low: number;
  readonly high: number;
  readonly mean: number;
  readonly thickest: number;
  readonly measured: boolean;
  /** true once a dated reading in the log stands behind it; absent counts as `measured` */
  readonly dated?: boolean;
};
