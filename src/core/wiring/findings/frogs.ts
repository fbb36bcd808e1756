import type { Finding } from '../../finding.ts';
import { length, type Said, say } from '../../units/say.ts';
import type { Feeder } from '../feeders.ts';
import type { Gap } from '../gap.ts';
import type { WiringInput } from '../input.ts';
import { PRACTICE, tell } from '../tell.ts';
import { isCut } from './gaps.ts';

type Fed = { readonly gaps: readonly Gap[]; readonly feeders: readonly Feeder[] };

/** What is fed from beyond a live frog, and where it is cut off from it. */
export function frogFindings(input: WiringInput, { gaps, feeders }: Fed): readonly Finding[] {
  const live = gaps.filter(({ why }) => why === 'frog');
  const open = live.filter((gap) => !isCut(input, gap));
  const frogs = [...new Set(live.map(({ of }) => of))];
  return [
    ...open.map((gap) => openFinding(gap, feeders)),
    ...frogs.flatMap((frog) => cutFinding(live.filter((one) => one.of === frog && !open.includes(one)))),
  ];
}

function openFinding({ at, line, of, segment }: Gap, feeders: readonly Feeder[]): Finding {
  const source = feeders
    .filter((one) => one.line === line)
    .toSorted((a, b) => distance(a, { segment, at }) - distance(b, { segment, at }))[0];
  const fed =
    source === undefined
      ? say`${line} is fed from beyond it`
      : say`${source.id} feeds ${line} at ${length(source.at)} beyond it`;
  return tell({
    rule: 'frog-not-cut',
    level: 'halt',
    where: turnoutOf(of),
    what: [`The frog of ${of} is live and `, ...fed, ': set the other way, its rail meets its opposite, a dead short.'],
    mend: say`Cut the rail that comes from the frog in ${line} at ${length(at)}, before anything feeds it.`,
    ...{ figure: at, unit: 'mm', source: `${PRACTICE}: every rail beyond a live frog is cut off from it` },
  });
}

/** A cut between two frogs is told at the first. */
function turnoutOf(of: string): string {
  return of.split(' and ')[0] ?? of;
}

/** Feeders of the same segment first, then the nearest. */
function distance({ at, segment }: Feeder, gap: Pick<Gap, 'segment' | 'at'>): number {
  return Math.abs(at - gap.at) + (segment === gap.segment ? 0 : 1e6);
}

function cutFinding(gaps: readonly Gap[]): readonly Finding[] {
  const [first] = gaps;
  if (first === undefined) return [];
  const places = gaps.flatMap(({ at, line }, i): readonly Said[] => [
    i === 0 ? '' : ' and ',
    `${line} at `,
    length(at),
  ]);
  const which = first.rails === 'both' ? 'both rails' : 'the rail that comes from it';
  return [
    tell({
      rule: 'frog-cut',
      level: 'note',
      where: turnoutOf(first.of),
      what: say`The frog of ${first.of} is live: it takes the polarity of the route that is set.`,
      mend: [`Cut ${which} in `, ...places, ', and switch the frog with the points.'],
      ...{ figure: gaps.length, source: PRACTICE },
    }),
  ];
}
