/** A side of a bench, as one stands before it. */
export type Outside = 'front' | 'back' | 'left' | 'right';
