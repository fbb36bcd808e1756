import type { Finding } from '../../finding.ts';
import { atLeast, length, type Said, say } from '../../units/say.ts';
import type { Gap } from '../gap.ts';
import { approachLength, type Gaps, NEAR_CUT } from '../gaps.ts';
import type { WiringInput } from '../input.ts';
import { leastCircle, reversingNeeds } from '../reversing-length.ts';
import { PRACTICE, tell } from '../tell.ts';

/** Cuts through the rails, reversing sections, and lift bridges. */
export function gapFindings(input: WiringInput, cut: Gaps): readonly Finding[] {
  return [
    ...cut.sections.flatMap((section) => sectionFindings(input, cut, section)),
    ...districtFindings(input, cut.gaps),
    ...bridgeFindings(input),
  ];
}

/** Whether the author cut there, or left all cuts to be proposed. */
export function isCut({ gaps }: WiringInput, { line, at }: Gap): boolean {
  return gaps === null || gaps.some((one) => one.line === line && Math.abs(one.at - at) <= NEAR_CUT);
}

function sectionFindings(
  input: WiringInput,
  { gaps, proved }: Gaps,
  section: Gaps['sections'][number],
): readonly Finding[] {
  const mine = gaps.filter(({ segment, why }) => segment === section.segment && why === 'reversing');
  const open = mine.filter((gap) => !isCut(input, gap));
  const by = input.supply.control === 'digital' ? 'an automatic reverser' : 'a changeover switch';
  const what = say`A train that goes round by ${section.line} comes back with its rails swapped.`;
  const source = 'parity of rail swaps round every closed route';
  const told =
    open.length > 0
      ? tell({
          ...{ rule: 'reversing-not-cut', level: 'halt', where: section.line, source },
          what: [...what, ' Its rails meet their opposites: a dead short.'],
          mend: [...cutBoth(section.line, open), ` and feed what lies between through ${by}.`],
          ...{ figure: mine.length - open.length, limit: mine.length },
        })
      : tell({
          ...{ rule: 'reversing-section', level: 'note', where: section.line, source, what },
          mend: [
            ...cutBoth(section.line, mine),
            `, feed what lies between through ${by}${proved ? '' : '; other places to cut may be fewer'}.`,
          ],
          ...{ figure: section.length, unit: 'mm' },
        });
  return [told, ...shortSection(input, section)];
}

function cutBoth(line: string, cuts: readonly Gap[]): readonly Said[] {
  return [
    `Cut both rails of ${line} at `,
    ...cuts.flatMap(({ at }, i): readonly Said[] => [i === 0 ? '' : ' and ', length(at)]),
  ];
}

/** A train that stands over both ends of a section joins what the reverser must hold apart. */
function shortSection({ train }: WiringInput, { line, length: long }: Gaps['sections'][number]): readonly Finding[] {
  if (train === null) {
    return [
      tell({
        rule: 'reversing-train-unknown',
        level: 'note',
        where: line,
        what: say`The reversing section on ${line} is ${length(long)} long; no train is known that conducts from end to end.`,
        mend: say`Write longest-train in wiring.md, or the conducting wheels of the vehicles.`,
        ...{ figure: long, unit: 'mm' },
      }),
    ];
  }
  const needs = reversingNeeds(train);
  if (long >= needs - 1e-9) return [];
  return [
    tell({
      rule: 'reversing-short',
      level: long >= train ? 'care' : 'halt',
      where: line,
      what: say`The reversing section on ${line} is ${length(long)} long; a train that conducts over ${length(train)} stands over both its ends.`,
      mend: say`Lengthen it by ${atLeast(needs - long)}; as a full circle it needs a radius of ${atLeast(leastCircle(needs))}. Or run trains that conduct over no more than ${length(Math.max(0, long / 1.1))}.`,
      ...{
        figure: long,
        limit: needs,
        unit: 'mm',
        source: `${PRACTICE}: as long as the longest train and a tenth more`,
      },
    }),
  ];
}

/** Rails of two districts that join. */
function districtFindings(input: WiringInput, gaps: readonly Gap[]): readonly Finding[] {
  return gaps
    .filter(({ why }) => why === 'district')
    .map((gap) => {
      const cut = isCut(input, gap);
      return tell({
        rule: cut ? 'district-cut' : 'districts-joined',
        level: cut ? 'note' : 'halt',
        where: gap.line,
        what: cut
          ? say`${gap.line} meets the rails of another district at ${length(gap.at)}.`
          : say`${gap.line} joins the rails of another district at ${length(gap.at)}: neither breaker can switch off alone.`,
        mend: say`Cut both rails of ${gap.line} at ${length(gap.at)}.`,
        ...{ figure: gap.at, unit: 'mm', source: 'geometry' },
      });
    });
}

function bridgeFindings({ lifts, train }: WiringInput): readonly Finding[] {
  const off = approachLength(train);
  return lifts.map(({ id, line, from, to }) =>
    tell({
      rule: 'lift-bridge-approach',
      level: 'note',
      where: id,
      what: say`When ${id} is up, ${line} goes dead over ${length(off)} before ${length(from)} and after ${length(to)}, so that nothing runs into the hole.`,
      mend: say`Cut both rails at the four places on the wiring list, feed the span through a flexible lead at its hinge, and both approaches through a switch that the closed bridge presses.`,
      ...{ figure: off, unit: 'mm' },
    }),
  );
}
