import type { Finding } from '../../finding.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import { listedAs } from '../assumed.ts';
import type { Site } from '../fitting.ts';
import { threadName } from '../hardware/bolts.ts';
import { itemOf } from '../hardware/count.ts';
import { angleFigures } from './angle-figures.ts';
import type { LegFigures } from './figures.ts';
import { insertHole, plateOf, plateThickness, standThread } from './stand.ts';

/** What nobody wrote about legs and what they stand on, with the figure that is used instead; none when all is written. */
export function legsAssumed(site: Site, legs: LegFigures): readonly Finding[] {
  const assumed = [...casterWords(legs), ...insertWords(legs), ...footWords(site, legs)];
  const mend = say`write plate-thickness or stem on the caster, hole on the insert, in a stock file; foot-width under legs`;
  return listedAs(assumed, { rule: 'legs-assumed', where: site.bench, mend });
}

function casterWords({ input: { stand } }: LegFigures): readonly Sentence[] {
  if (stand.kind !== 'caster') return [];
  const casters = [stand.caster, ...(stand.free === null ? [] : [stand.free])];
  return casters.flatMap((caster): readonly Sentence[] => {
    const own = { ...stand, caster, free: null };
    if (caster.mount === 'plate') {
      if (caster.plateThickness != null) return [];
      return [say`the plate of ${caster.id} is ${length(plateThickness(caster))} thick`];
    }
    const [a, b] = plateOf(own, '');
    return [
      ...(caster.stem == null
        ? [say`the stem of ${caster.id} has a thread of ${threadName(standThread(own, ''))}`]
        : []),
      ...(caster.plate === null ? [say`${caster.id} needs ${length(a)} by ${length(b)} of its pad`] : []),
    ];
  });
}

function insertWords({ input: { stand }, goods }: LegFigures): readonly Sentence[] {
  if (stand.kind === 'floor') return [];
  const thread = standThread(stand, '');
  const insert = goods === null ? null : itemOf(goods, { form: 'insert', diameter: thread });
  if (insert?.hole != null) return [];
  return [
    say`an insert with a thread of ${threadName(thread)} is screwed into a hole of ${length(insertHole(goods, thread))}`,
  ];
}

function footWords(site: Site, legs: LegFigures): readonly Sentence[] {
  if (legs.input.form !== 'angle' || legs.input.footWidth !== null) return [];
  const { footWidth } = angleFigures(site, legs, '');
  return [say`a half tapers from ${length(legs.width)} to ${length(footWidth)} at its foot`];
}
