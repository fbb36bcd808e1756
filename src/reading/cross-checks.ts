import type { Plan } from '../core/plan.ts';
import { type Fault, type Problem, problemAt, type Spots } from '../core/units/problem.ts';
import { type Page, spotInBody } from './chapter.ts';
import { duplicateIds } from './duplicates.ts';
import { type Known, type Shared, unknownName } from './known.ts';
import { loopsOfSteps } from './loops.ts';
import { photoName, photoTelling } from './photo-names.ts';
import {
  benchworkReferences,
  entryReferences,
  headReferences,
  sceneryReferences,
  trackReferences,
  wiringReferences,
} from './references.ts';
import { problemOn } from './source.ts';

/** What was read of a notebook, mistakes left out. */
export type Content = Pick<Plan, 'track' | 'wiring' | 'scenery' | 'log'> & {
  readonly head: Plan['head'] | null;
  readonly benchwork: Plan['benchwork'] | null;
  readonly pages: readonly Page[];
  readonly photos: readonly string[];
  /** chapters that were not read to their end */
  readonly cut: ReadonlySet<string>;
  readonly shared: Shared;
  readonly spots: Spots;
};

/** An absent chapter has no lines and no hills; one that could not be read may have any. */
function knownOf(content: Content): Known {
  const { benchwork, track, scenery, cut, shared } = content;
  const none = { trains: [], lines: [], beside: [], turnouts: {}, steps: [] };
  const there = (chapter: string) => content.pages.some((page) => page.root === chapter);
  const readable = (chapter: string) => !cut.has(chapter);
  const land = readable('scenery') && (scenery !== null || !there('scenery'));
  return {
    ...shared,
    materials: benchwork === null || !readable('benchwork') ? null : Object.keys(benchwork.materials),
    track: !readable('track') ? null : (track ?? (there('track') ? null : none)),
    water: land ? (scenery?.ground?.water.map((water) => water.id) ?? []) : null,
    hills: land ? (scenery?.ground?.hills.map((hill) => hill.id) ?? []) : null,
  };
}

function referenceFaults(content: Content): readonly Fault[] {
  const { head, benchwork, track, wiring, scenery, log } = content;
  const known = knownOf(content);
  const references = [
    ...(head === null ? [] : headReferences(head)),
    ...(benchwork === null ? [] : benchworkReferences(benchwork)),
    ...(track === null ? [] : trackReferences(track)),
    ...(wiring === null ? [] : wiringReferences(wiring)),
    ...(scenery === null ? [] : sceneryReferences(scenery)),
    ...log.flatMap(entryReferences),
  ];
  return references.flatMap((reference) => unknownName(reference, known) ?? []);
}

function logFaults({ log, photos }: Content): readonly Fault[] {
  return log.flatMap((entry): Fault[] => {
    const root = `log.${entry.id}`;
    const named = [
      ...entry.photos.map((photo, i) => ({ at: `${root}.photos.${i}.file`, name: photo.file })),
      ...entry.hidden.flatMap(({ photo }, i) =>
        photo === undefined ? [] : [{ at: `${root}.hidden.${i}.photo`, name: photo }],
      ),
    ];
    const wrong = named.flatMap(({ at, name }) => {
      const telling = photoTelling(name, photos);
      return telling === null ? [] : [{ at, ...telling }];
    });
    if (entry.id.startsWith(entry.date)) return wrong;
    const what = `the day is ${entry.date}, and the file is named ${entry.id.slice(0, 10)}`;
    return [
      ...wrong,
      { rule: 'entry-date', at: `${root}.date`, what, mend: 'give the file and its `date` the same day' },
    ];
  });
}

function chapterSteps({ benchwork, track, wiring, scenery }: Content) {
  const chapters = { benchwork, track, wiring, scenery };
  return Object.entries(chapters).flatMap(([chapter, read]) => (read === null ? [] : [{ chapter, steps: read.steps }]));
}

function pictureProblems(page: Page, photos: readonly string[]): readonly Problem[] {
  const asked = page.body.directives.filter((one) => one.name === 'photo' && (one.attributes.file ?? '') !== '');
  const named = [
    ...asked.map((one) => ({ name: one.attributes.file ?? '', offset: one.offset })),
    ...page.body.pictures.map((picture) => ({ name: photoName(picture.address), offset: picture.offset })),
  ];
  return named.flatMap(({ name, offset }) => {
    const telling = photoTelling(name, photos);
    return telling === null ? [] : [problemOn(spotInBody(page, offset), telling)];
  });
}

/** Names that point to nothing, ids taken twice, steps in a ring, photos that are not there. */
export function namesProblems(content: Content): readonly Problem[] {
  const faults = [
    ...referenceFaults(content),
    ...duplicateIds(content),
    ...loopsOfSteps(chapterSteps(content)),
    ...logFaults(content),
  ];
  return [
    ...faults.map((fault) => problemAt(content.spots, fault)),
    ...content.pages.flatMap((page) => pictureProblems(page, content.photos)),
  ];
}
