import type { Fault } from '../units/problem.ts';
import { type Element, lengthBeside, stanceOn } from './element.ts';
import { fault, mm } from './fault.ts';
import type { BesideInput } from './input.ts';
import type { LineWay } from './line.ts';

/**
 * A line beside another, everywhere the same distance off it: straights stay straight, arcs keep their centre, and an
 * easement becomes the curve parallel to its clothoid. Turnouts of the other line are passed as plain track.
 */
export function besideLine(
  input: BesideInput,
  lines: ReadonlyMap<string, LineWay>,
): { readonly line: LineWay | null; readonly faults: readonly Fault[] } {
  const main = lines.get(input.line);
  if (main === undefined) return { line: null, faults: [] };
  if (!(input.by > 0)) {
    const words = { what: `${input.id} lies ${mm(input.by)} beside ${input.line}`, mend: 'write more than 0' };
    return { line: null, faults: [fault('length-impossible', `${input.at}.by`, words)] };
  }
  const aside = input.side === 'left' ? input.by : -input.by;
  const sharp = main.elements.find(({ stretch }) => Math.max(aside * stretch.k0, aside * stretch.k1) >= 1 - 1e-9);
  if (sharp !== undefined) {
    const radius = 1 / Math.max(Math.abs(sharp.stretch.k0), Math.abs(sharp.stretch.k1));
    const what = `${mm(input.by)} inside a curve of ${mm(radius)} leaves no track`;
    return {
      line: null,
      faults: [fault('beside-too-far', `${input.at}.by`, { what, mend: `less than ${mm(radius)}` })],
    };
  }
  return { line: shifted(input, main, aside), faults: [] };
}

function shifted({ id, at, phase }: BesideInput, main: LineWay, aside: number): LineWay {
  let from = 0;
  const elements = main.elements.map((element): Element => {
    const length = lengthBeside(element.stretch, aside, element.stretch.length);
    const own = { ...element, turnout: null, aside, from, length };
    from += length;
    return own;
  });
  const [first, last] = [elements[0], elements[elements.length - 1]];
  const start = first === undefined ? main.start : stanceOn(first, 0);
  const end = last === undefined ? main.end : stanceOn(last, last.length);
  const closed = main.ends === `${main.id}.start`;
  return {
    ...{ id, at, phase, elements, length: from, start, end },
    joints: main.joints.map((joint) => besideJoint(joint, main, elements)),
    unknowns: [],
    from: null,
    ends: closed ? `${id}.start` : 'open',
  };
}

/** A joint of the main line, square across. */
function besideJoint(joint: LineWay['joints'][number], main: LineWay, elements: readonly Element[]) {
  const i = main.elements.findIndex(({ from, length }) => Math.abs(from + length - joint.at) < 1e-6);
  const element = elements[i];
  if (element === undefined) return joint;
  const { x, y, heading } = stanceOn(element, element.length);
  return { id: joint.id, at: element.from + element.length, x, y, heading };
}
