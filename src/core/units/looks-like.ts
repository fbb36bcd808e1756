import { readGauge, wireDiameter } from './gauge.ts';
import { readGloss } from './gloss.ts';
import { faultAt, quoted } from './misread.ts';
import { readNominal } from './nominal.ts';
import type { Fault } from './problem.ts';
import type { Dimension } from './quantity.ts';
import { asFeetAndInches, readRange } from './range.ts';
import { bothUnits, inBothUnits } from './reading.ts';
import { roundTo } from './round.ts';
import { readSizes } from './sizes.ts';
import { readThicknessName } from './thickness-name.ts';

type Told = readonly [rule: string, what: string, mend: string];

function gauge(text: string, dimension: Dimension): Told | null {
  const found = readGauge(text);
  if (found === null) return null;
  const { of, number } = found;
  if (of === 'unsaid') {
    const mend = dimension === 'number' ? `write \`${number}\`` : 'write the size itself, with its unit';
    return ['number-mark', `${quoted(text)} can be a frog number, a wire gauge or a screw size`, mend];
  }
  if (of === 'frog')
    return ['number-mark', `${quoted(text)} is a frog number`, `write \`${number}\` where a frog number is asked for`];
  if (of === 'screw')
    return ['number-mark', `${quoted(text)} is a screw size`, "write the screw's diameter with its unit"];
  const diameter = roundTo(wireDiameter(number), 0.01);
  return [
    'number-mark',
    `${quoted(text)} is a wire gauge, ${diameter} mm in diameter`,
    `write \`${diameter} mm\`, or name the wire's stock`,
  ];
}

function nominal(text: string): Told | null {
  const found = readNominal(text);
  const first = found?.sizes[0];
  if (found === null || first === undefined) return null;
  const planed =
    first.dressed === null
      ? ''
      : `; planed it is ${bothUnits(first.dressed.thickness)} by ${bothUnits(first.dressed.width)}`;
  return [
    'nominal-size',
    `${quoted(text)} is a nominal board size${planed}`,
    "name the board's stock, and write one length here",
  ];
}

function sizes(text: string): Told | null {
  const found = readSizes(text);
  if (found === null) return null;
  const all = found.map((size) => `\`${size.text}\` (${inBothUnits(size.mm)})`).join(', ');
  return [
    'several-lengths',
    `${quoted(text)} holds ${found.length} lengths: ${all}`,
    `write one of them, each under its own key`,
  ];
}

function range(text: string): Told | null {
  const found = readRange(text);
  if (found === null) return null;
  const feet = asFeetAndInches(text);
  const also = feet === null ? '' : `, or \`${feet}\` if feet and inches are meant`;
  return [
    'range',
    `${quoted(text)} is a range from ${bothUnits(found.from)} to ${bothUnits(found.to)}`,
    `write one length${also}; a difference has spaces around its minus`,
  ];
}

function thicknessName(text: string): Told | null {
  const found = readThicknessName(text);
  if (found === null) return null;
  return [
    'thickness-name',
    `${quoted(text)} names a sheet by its nominal thickness, ${bothUnits(found.nominal)}`,
    "name the sheet's stock, or write its measured thickness alone",
  ];
}

function gloss(text: string): Told | null {
  const found = readGloss(text);
  if (found === null) return null;
  const apart = found.apart < 0.005 ? 'the same' : `${bothUnits(found.apart)} off`;
  return [
    'gloss',
    `${quoted(text)} is a length with a gloss; the gloss is ${bothUnits(found.gloss)}, ${apart}`,
    `write \`${found.text}\` alone`,
  ];
}

/**
 * The fault of a text that is shop notation for something else than one value: sizes, a range, a nominal board, a
 * sheet's name, a length with a gloss, a number mark. Says what it looks like and how to write it; null when it is none.
 */
export function looksLike(text: string, dimension: Dimension): Fault | null {
  const written = text.trim();
  const told =
    dimension === 'length'
      ? [gauge, nominal, sizes, range, thicknessName, gloss]
      : dimension === 'number'
        ? [gauge]
        : [];
  for (const one of told) {
    const found = one(written, dimension);
    if (found !== null) return faultAt(text.length - text.trimStart().length, found[0], [found[1], found[2]]);
  }
  return null;
}
