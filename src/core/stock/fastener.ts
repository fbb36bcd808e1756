import type { Vector } from '../geometry/shapes.ts';

/**
 * A screw or bolt as it is driven: the underside of its head, the way it goes and the instances it goes through, the
 * last of them holding the tip (a bolt's nut lies beyond the last, unless it goes into an insert of its only piece).
 * Bench coordinates, mm.
 */
export type Fastener = {
  readonly id: string;
  /** id of the hardware in stock */
  readonly item: string;
  readonly form: 'screw' | 'bolt';
  /** the joint or the thing it holds */
  readonly holds: string;
  readonly head: Vector;
  /** unit length */
  readonly direction: Vector;
  readonly diameter: number;
  readonly length: number;
  readonly through: readonly string[];
};

/** Whether a fastener holds pieces to each other; one that goes through a single piece fixes metal on it. */
export function joinsPieces({ through }: Pick<Fastener, 'through'>): boolean {
  return through.length > 1;
}

/** How many of an item of stock are used for something; `length` of one, mm, where it has one. */
export type HardwareUse = {
  readonly item: string;
  readonly quantity: number;
  readonly length: number | null;
  readonly where: string;
};
