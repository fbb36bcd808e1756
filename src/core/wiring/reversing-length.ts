/** A reversing section is made this much longer than the longest train; common practice, no source. */
export const REVERSING_MARGIN = 1.1;

/** How long a reversing section has to be for a train that conducts from end to end, margin counted; mm. */
export function reversingNeeds(train: number, margin = REVERSING_MARGIN): number {
  return train * margin;
}

/** The smallest radius of a full circle that holds a reversing section of `length`: length / 2 pi; mm. */
export function leastCircle(length: number): number {
  return length / (2 * Math.PI);
}

/** Length of a full circle, mm. */
export function circleLength(radius: number): number {
  return 2 * Math.PI * radius;
}
