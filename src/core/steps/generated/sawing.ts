import type { Part } from '../../stock/part.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import { type Draft, draft, type Work } from './draft.ts';
import { counted, grouped, instanceIds, instances, tenth } from './words.ts';

/** Wider than this a piece is cut from the sheet as a panel, not ripped as a strip; mm; common practice, no source. */
const WIDEST_STRIP = 300;

/** Whether a part is ripped to width first and crosscut after. */
export function isStrip(part: Part): boolean {
  return part.role !== 'deck' && Math.min(part.blank.length, part.blank.width) <= WIDEST_STRIP;
}

function fenceLine(strips: readonly Part[]): Sentence {
  const width = strips[0]?.blank.width ?? 0;
  const run = strips.reduce((sum, part) => sum + part.places.length * part.blank.length, 0);
  return say`Fence at ${length(width)} from ${strips[0]?.stock ?? ''}: ${length(run)} of strip in all, and the kerfs between. Rip every strip of this width before the fence moves.`;
}

function ripWork(strips: readonly Part[]): Work[] {
  return grouped(strips, (part) => part.role).map((parts) => ({
    kind: 'role' as const,
    noun: parts[0]?.role ?? '',
    makes: instanceIds(parts),
    lines: grouped(parts, (part) => `${tenth(part.blank.width)} ${part.stock}`).map(ripLine),
  }));
}

function ripLine(parts: readonly Part[]): Sentence {
  const longest = Math.max(...parts.map((part) => part.blank.length));
  const count = parts.reduce((sum, part) => sum + part.places.length, 0);
  return say`${parts[0]?.role ?? ''}: ${counted(count, 'piece')} ${length(parts[0]?.blank.width ?? 0)} wide, the longest ${length(longest)}.`;
}

/** The real thickness of each sheet, before a part is cut by it; `materials` are the stock of each role. */
function measuring(materials: Readonly<Record<string, string>>): Draft[] {
  const roles = Object.entries(materials);
  if (roles.length === 0) return [];
  return [
    draft({
      id: 'measure-sheets',
      title: 'Measure the sheets',
      lines: [
        say`Three readings of each, well in from the edges, before anything is cut. Log them: slots follow the thickest.`,
      ],
      work: [
        {
          kind: 'machining',
          noun: 'measure',
          makes: [],
          lines: roles.map(([role, stock]) => say`${stock}, logged as ${role}.thickness.`),
        },
      ],
      tools: ['caliper'],
      child: 'does with an adult',
    }),
  ];
}

/** A fence setting for each width among the pieces that are ripped here. */
function fencesFor(strips: readonly Part[], made: ReadonlySet<string>): Sentence[] {
  const own = strips.flatMap((part) => {
    const places = part.places.filter(({ id }) => made.has(id));
    return places.length === 0 ? [] : [{ ...part, places }];
  });
  return grouped(own, (part) => `${tenth(part.blank.width)} ${part.stock}`).map(fenceLine);
}

/** All strips of one width at one fence setting. */
function ripping(parts: readonly Part[]): Draft[] {
  const strips = parts.filter(isStrip);
  if (strips.length === 0) return [];
  return [
    draft({
      id: 'rip',
      title: 'Rip the strips',
      restTitle: 'Rip the other strips',
      linesOf: (made) => fencesFor(strips, made),
      work: ripWork(strips),
      tools: ['table-saw', 'push-stick'],
      deeds: ['full-sheet', 'strip'],
      people: 2,
      child: 'away',
      after: ['measure-sheets'],
    }),
  ];
}

function stopLine(parts: readonly Part[]): Sentence {
  const count = parts.reduce((sum, part) => sum + part.places.length, 0);
  return say`Stop block at ${length(parts[0]?.blank.length ?? 0)}: ${counted(count, 'piece')}: ${instances(parts)}.`;
}

/** Strips to length against a stop block, longest first. */
function crosscutting(parts: readonly Part[]): Draft[] {
  const strips = parts.filter(isStrip).sort((a, b) => b.blank.length - a.blank.length);
  if (strips.length === 0) return [];
  const lead = say`Square one end of each strip; that is its left end, and every later measure starts there. Longest pieces first.`;
  return [
    draft({
      id: 'crosscut',
      title: 'Crosscut the strips to length',
      restTitle: 'Crosscut the other strips to length',
      lines: [lead],
      work: [
        {
          kind: 'machining',
          noun: 'crosscut',
          makes: instanceIds(strips),
          lines: grouped(strips, (part) => tenth(part.blank.length)).map(stopLine),
        },
      ],
      tools: ['circular-saw', 'square', 'stop-block'],
      child: 'away',
      after: ['rip'],
    }),
  ];
}

function panelLine(part: Part): Sentence {
  const { length: long, width } = part.blank;
  return say`${instances([part])}: ${length(long)} by ${length(width)} from ${part.stock}.`;
}

/** Decks and other wide pieces straight from the sheet. */
function panelCutting(parts: readonly Part[]): Draft[] {
  const panels = parts.filter((part) => !isStrip(part));
  if (panels.length === 0) return [];
  const work = grouped(panels, (part) => part.role).map((same) => ({
    kind: 'role' as const,
    noun: same[0]?.role ?? '',
    makes: instanceIds(same),
    lines: same.map(panelLine),
  }));
  const lead = say`Good face down for a hand-held saw. Compare both diagonals of each piece before the next cut.`;
  return [
    draft({
      id: 'panels',
      title: 'Cut the panels',
      restTitle: 'Cut the other panels',
      lines: [lead],
      work,
      tools: ['circular-saw', 'straightedge'],
      deeds: ['full-sheet'],
      people: 2,
      child: 'away',
      after: ['measure-sheets'],
    }),
  ];
}

/** Measure, rip, then crosscut, then what comes straight from the sheet; `materials` are the stock of each role. */
export function sawing(parts: readonly Part[], materials: Readonly<Record<string, string>> = {}): Draft[] {
  return [...measuring(materials), ...ripping(parts), ...crosscutting(parts), ...panelCutting(parts)];
}
