import type { Point } from '../../core/geometry/shapes.ts';
import type { Part } from '../../core/stock/part.ts';
import { viewChains } from '../bench-chains.ts';
import { headedBlock } from '../bench-view.ts';
import { type Block, joined } from '../block.ts';
import type { DrawingOptions, DrawingUnit } from '../drawing.ts';
import { lengthText, saidLength } from '../figures.ts';
import { noteBlocks } from '../notes.ts';
import { scaleText } from '../paper.ts';
import { outlineOf } from '../scene.ts';
import type { View } from '../view.ts';
import { areaMark, type LandLayout, largest } from './land-stage.ts';

/** Heights of a profile are told this far apart, mm or in mm of 2 in. */
const APART: Readonly<Record<DrawingUnit, number>> = { mm: 25, in: 25.4 };

/** A profile board: its true shape, and heights along it for setting it out on the wood. */
export function boardLayout(part: Part, options: DrawingOptions): LandLayout {
  const { length, width, thickness } = part.blank;
  const { block, scale } = largest((at) => boardBlock(part, options, at), options, { width: length, height: width });
  const heights = offsets(part, options.unit);
  const notes = noteBlocks(
    'Heights over the lower edge, by distance from the left end',
    heights.map(([x, y]) => ({
      letter: lengthText(x, options.unit),
      words: lengthText(y, options.unit),
      dimensions: [],
    })),
  );
  const size = `${saidLength(length, options.unit)} long, ${saidLength(width, options.unit)} at its highest, ${saidLength(thickness, options.unit)} thick`;
  return {
    blocks: [block, ...notes],
    scale,
    desc: `Profile board ${part.label} of ${part.stock}: ${size}. It stands on the deck, its outer face flush with the frame.`,
  };
}

function boardBlock(part: Part, { unit }: DrawingOptions, scale: number): Block {
  const view: View = { name: part.id, scale, origin: [0, 0], breaks: [] };
  const { length, width } = part.blank;
  const marks = [areaMark(view, outlineOf(part), { pen: 'edge', fill: 'wood' })];
  const chains = viewChains({
    view,
    unit,
    box: { u0: 0, u1: length, v0: 0, v1: width },
    along: { name: `${part.id} along`, at: [0, length] },
    upright: { name: `${part.id} height`, at: [0, width], side: 'left' },
  });
  return headedBlock(
    joined({ marks, views: [view], dimensions: [] }, chains),
    `Profile board ${part.label} ${scaleText(scale)}`,
    [],
  );
}

/** Heights of the top edge at round distances and at the right end. */
function offsets(part: Part, unit: DrawingUnit): readonly Point[] {
  const { length } = part.blank;
  const count = Math.floor(length / APART[unit]);
  const stops = [...Array.from({ length: count + 1 }, (_, i) => i * APART[unit]), length];
  const top = outlineOf(part).outline;
  return stops.map((x): Point => [x, heightAt(top, x)]);
}

/** The highest crossing of an upright line with a loop. */
function heightAt(loop: readonly Point[], x: number): number {
  const inside = Math.min(Math.max(x, 1e-3), Math.max(...loop.map(([px]) => px)) - 1e-3);
  return loop.reduce((most, [ax, ay], i) => {
    const [bx, by] = loop[(i + 1) % loop.length] ?? [ax, ay];
    if (ax > inside === bx > inside) return most;
    return Math.max(most, ay + ((by - ay) * (inside - ax)) / (bx - ax));
  }, 0);
}
