import type { Point, Polygon } from './shapes.ts';

type Edge = { readonly a: Point; readonly b: Point };
type Slab = { readonly x0: number; readonly x1: number; readonly below: Edge; readonly above: Edge };

const SAME = 1e-9;

/**
 * Cuts a polygon with holes at every corner's x into convex pieces (trapezoids, triangles, rectangles) that share no
 * inside; pieces between the same two edges are joined again. Counter-clockwise, mm.
 */
export function slabs(polygon: Polygon): readonly (readonly Point[])[] {
  const edges = [polygon.outline, ...polygon.holes].flatMap(edgesOf);
  const xs = distinct(edges.flatMap((edge) => [edge.a[0], edge.b[0]]));
  const open: Slab[] = [];
  const closed: Slab[] = [];
  xs.slice(1).forEach((x1, i) => {
    const x0 = xs[i] ?? x1;
    const here = between(edges, x0, x1);
    const still = here.map((slab) => {
      const before = open.findIndex(
        (o) => o.below === slab.below && o.above === slab.above && Math.abs(o.x1 - x0) < SAME,
      );
      const old = before < 0 ? undefined : open.splice(before, 1)[0];
      return old === undefined ? slab : { ...slab, x0: old.x0 };
    });
    closed.push(...open.splice(0, open.length));
    open.push(...still);
  });
  return [...closed, ...open].map(corners).filter((loop) => loop.length > 2);
}

/** Edges that run from left to right; upright ones bound no slab. */
function edgesOf(loop: readonly Point[]): readonly Edge[] {
  return loop.flatMap((a, i): Edge[] => {
    const b = loop[(i + 1) % loop.length] ?? a;
    if (Math.abs(a[0] - b[0]) < SAME) return [];
    return a[0] < b[0] ? [{ a, b }] : [{ a: b, b: a }];
  });
}

function between(edges: readonly Edge[], x0: number, x1: number): readonly Slab[] {
  const middle = (x0 + x1) / 2;
  const across = edges
    .filter((edge) => edge.a[0] <= x0 + SAME && edge.b[0] >= x1 - SAME)
    .sort((p, q) => heightAt(p, middle) - heightAt(q, middle));
  return across.flatMap((below, i) => {
    const above = across[i + 1];
    return i % 2 === 0 && above !== undefined ? [{ x0, x1, below, above }] : [];
  });
}

function heightAt(edge: Edge, x: number): number {
  const share = (x - edge.a[0]) / (edge.b[0] - edge.a[0]);
  return edge.a[1] + (edge.b[1] - edge.a[1]) * share;
}

function corners(slab: Slab): readonly Point[] {
  const { x0, x1, below, above } = slab;
  const loop: readonly Point[] = [
    [x0, heightAt(below, x0)],
    [x1, heightAt(below, x1)],
    [x1, heightAt(above, x1)],
    [x0, heightAt(above, x0)],
  ];
  return loop.filter((p, i) => {
    const next = loop[(i + 1) % loop.length] ?? p;
    return Math.abs(p[0] - next[0]) > SAME || Math.abs(p[1] - next[1]) > SAME;
  });
}

function distinct(values: readonly number[]): readonly number[] {
  return [...values].sort((a, b) => a - b).filter((x, i, sorted) => i === 0 || x - (sorted[i - 1] ?? x) > SAME);
}
