/** One direction of a matrix: `image` = A times `of`, of length `size`; `of` has length 1. */
export type Singular = { readonly of: readonly number[]; readonly image: readonly number[]; readonly size: number };

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}

function mixed(a: readonly number[], b: readonly number[], [c, s]: readonly [number, number]): number[] {
  return a.map((value, i) => c * value + s * (b[i] ?? 0));
}

/**
 * Singular values and directions of a matrix given by its columns, largest first; one-sided rotations (Hestenes,
 * J. SIAM 6, 1958), which keep small values exact.
 */
export function singularDirections(columns: readonly (readonly number[])[]): readonly Singular[] {
  const images = columns.map((column) => [...column]);
  const spans = columns.map((_, i) => columns.map((__, j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < 40; sweep += 1) {
    let turned = false;
    for (let i = 0; i < images.length; i += 1) {
      for (let j = i + 1; j < images.length; j += 1) turned = rotate(images, spans, [i, j]) || turned;
    }
    if (!turned) break;
  }
  return images
    .map((image, i) => ({ of: spans[i] ?? [], image, size: Math.sqrt(dot(image, image)) }))
    .sort((a, b) => b.size - a.size);
}

/** Makes two columns square to each other; false when they are already. */
function rotate(images: number[][], spans: number[][], [i, j]: readonly [number, number]): boolean {
  const [a, b, va, vb] = [images[i] ?? [], images[j] ?? [], spans[i] ?? [], spans[j] ?? []];
  const [aa, bb, ab] = [dot(a, a), dot(b, b), dot(a, b)];
  if (Math.abs(ab) <= 1e-15 * Math.sqrt(aa * bb) || ab === 0) return false;
  const zeta = (bb - aa) / (2 * ab);
  const t = (zeta < 0 ? -1 : 1) / (Math.abs(zeta) + Math.sqrt(1 + zeta * zeta));
  const c = 1 / Math.sqrt(1 + t * t);
  const s = c * t;
  images[i] = mixed(a, b, [c, -s]);
  images[j] = mixed(a, b, [s, c]);
  spans[i] = mixed(va, vb, [c, -s]);
  spans[j] = mixed(va, vb, [s, c]);
  return true;
}

/** A direction smaller than this part of the largest one counts as none. */
export const RANK_SHARE = 1e-7;

/** How many directions of a matrix are more than noise; `scale` is the size below which all of it is none. */
export function rankOf(directions: readonly Singular[], scale: number): number {
  const most = Math.max(directions[0]?.size ?? 0, scale);
  return directions.filter(({ size }) => size > RANK_SHARE * most).length;
}

/** The shortest x for which A x comes nearest to `wanted`. */
export function leastSquares(directions: readonly Singular[], wanted: readonly number[], count: number): number[] {
  const used = directions.slice(0, rankOf(directions, 0));
  const shares = used.map(({ image, size }) => dot(image, wanted) / (size * size));
  return Array.from({ length: count }, (_, j) =>
    used.reduce((sum, { of }, i) => sum + (shares[i] ?? 0) * (of[j] ?? 0), 0),
  );
}
