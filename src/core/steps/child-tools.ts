import { HAND_SAWS } from './cautions.ts';
import type { ChildPart } from './step.ts';

const MACHINES: ReadonlySet<string> = new Set([
  ...['table-saw', 'router', 'router-table', 'trim-router', 'circular-saw', 'track-saw', 'plunge-saw', 'jigsaw'],
  ...[
    'planer',
    'disc-sander',
    'bandsaw',
    'mitre-saw',
    'hot-wire',
    'hot-wire-cutter',
    'spray-paint',
    'spray-can',
    'resin',
  ],
]);

/** What a child handles only beside an adult. */
const BESIDE_AN_ADULT: ReadonlySet<string> = new Set([
  ...['soldering-iron', 'solder', 'hot-glue', 'glue-gun', 'superglue', 'craft-knife', 'knife', 'scalpel', 'chisel'],
  ...['drill', 'rail-cutter', 'cutting-disc', 'epoxy', 'plaster', 'static-grass-tool'],
  ...HAND_SAWS,
]);

const RANK: readonly ChildPart[] = ['away', 'watches', 'does with an adult', 'does alone'];

/** The careful answer where the author gives none: away from machines, else watching. */
export function childAt(tools: readonly string[]): ChildPart {
  return tools.some((tool) => MACHINES.has(tool)) ? 'away' : 'watches';
}

/** What of a step's tools is not for a child that does so much of it, with the most a child may do there; null where all is well. */
export function toolNotForChild(
  child: ChildPart,
  tools: readonly string[],
): { readonly tool: string; readonly most: ChildPart } | null {
  if (RANK.indexOf(child) <= RANK.indexOf('watches')) return null;
  const machine = tools.find((tool) => MACHINES.has(tool));
  if (machine !== undefined) return { tool: machine, most: 'watches' };
  const beside = child === 'does alone' ? tools.find((tool) => BESIDE_AN_ADULT.has(tool)) : undefined;
  return beside === undefined ? null : { tool: beside, most: 'does with an adult' };
}
