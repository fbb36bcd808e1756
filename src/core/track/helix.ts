import type { Finding } from '../finding.ts';
import { atLeast, length, say } from '../units/say.ts';
import type { ClearHeight, Levels } from './clearance.ts';
import { railSeparation } from './clearance.ts';
import { curvatureOn } from './element.ts';
import type { TrackInput } from './input.ts';
import type { LineWay } from './line.ts';
import { heightAt, type Profile } from './profile.ts';
import { helixGrade } from './ramp.ts';
import { percent, tell } from './tell.ts';

type Site = { readonly input: TrackInput; readonly levels: Levels; readonly clear: ClearHeight };

/** Arcs of more than a full turn whose turns do not clear each other, with the grade that would. */
export function helixFindings(line: LineWay, profile: Profile, { levels, clear }: Site): readonly Finding[] {
  const needed = railSeparation(levels);
  return line.elements.flatMap((element) => {
    const radius = 1 / Math.abs(curvatureOn(element, 0));
    const turn = 2 * Math.PI * radius;
    if (element.kind !== 'arc' || element.length < turn - 1e-6) return [];
    const [from, last] = [element.from, element.from + element.length - turn];
    const stops = [from, last, ...profile.curves.flatMap((one) => [one.from, one.to, one.from - turn, one.to - turn])];
    const rises = stops
      .filter((at) => at >= from && at <= last)
      .map((at) => Math.abs(heightAt(profile, at + turn) - heightAt(profile, at)));
    const rise = Math.min(...rises);
    if (rise >= needed - 1e-6) return [];
    return [
      tell({
        rule: 'helix-turns-close',
        level: 'halt',
        where: line.id,
        what: say`a turn of the helix of ${length(radius)} climbs ${length(rise)} from rail top to rail top`,
        figure: rise,
        limit: needed,
        unit: 'mm',
        mend: say`climb ${percent(helixGrade({ radius, rise: needed }))}, or take a radius of ${atLeast((radius * needed) / Math.max(rise, 1e-9))} at the same grade`,
        source: clear.source,
      }),
    ];
  });
}
