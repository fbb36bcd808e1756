import type { Finding } from '../finding.ts';
import { within } from '../geometry/pose.ts';
import type { Pose } from '../geometry/shapes.ts';
import type { Feature, Part, Placement, Request } from './part.ts';
import { missedFinding, penetrationFindings } from './penetration-findings.ts';
import { requestFeature } from './request-feature.ts';

/** Parts as they are cut once every room has had its holes, and what is to be said about those. */
export type Penetrated = { readonly parts: readonly Part[]; readonly findings: readonly Finding[] };

/** How each bench stands in notebook coordinates, by its id. */
export type Standing = Readonly<Record<string, Pose>>;

/**
 * Every request applied to the instance it names. Parts keep their blanks and places; a shape of which only some
 * instances are asked becomes two parts, each called by its first instance. Requests that miss are findings.
 */
export function penetrated(parts: readonly Part[], requests: readonly Request[], standing: Standing): Penetrated {
  const known = new Set(parts.flatMap((part) => part.places.map(({ id }) => id)));
  const lost = requests.filter(({ part }) => !known.has(part)).map(missedFinding);
  const cut = parts.map((part) => cutPart(part, requests, standing));
  return { parts: cut.flatMap((one) => one.parts), findings: [...lost, ...cut.flatMap((one) => one.findings)] };
}

function cutPart(part: Part, requests: readonly Request[], standing: Standing): Penetrated {
  const asked = part.places.map((place) => askedOf(part, place, { requests, standing }));
  if (asked.every(({ features }) => features.length === 0)) {
    return { parts: [part], findings: asked.flatMap(({ missed }) => missed.map(missedFinding)) };
  }
  const findings = asked.flatMap(({ place, missed, features }) => [
    ...missed.map(missedFinding),
    ...penetrationFindings(part, place.id, features),
  ]);
  return { parts: split(part, asked), findings };
}

type Asked = {
  readonly place: Placement;
  readonly features: readonly Feature[];
  readonly missed: readonly Request[];
};

type Asking = { readonly requests: readonly Request[]; readonly standing: Standing };

function askedOf(part: Part, place: Placement, { requests, standing }: Asking): Asked {
  const bench = standing[part.bench];
  const pose = bench === undefined ? place.pose : within(bench, place.pose);
  const mine = requests
    .filter((request) => request.part === place.id)
    .map((request) => ({ request, feature: requestFeature(part.blank, pose, request) }));
  return {
    place,
    features: mine.flatMap(({ feature }) => (feature === null ? [] : [feature])),
    missed: mine.filter(({ feature }) => feature === null).map(({ request }) => request),
  };
}

/** Instances asked for the same stay one part. */
function split(part: Part, asked: readonly Asked[]): readonly Part[] {
  const groups = new Map<string, Asked[]>();
  for (const one of asked) {
    const key = JSON.stringify(one.features);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map((group) => groupPart(part, group, groups.size));
}

function groupPart(part: Part, group: readonly Asked[], of: number): Part {
  const places = group.map(({ place }) => place);
  const features = [...part.features, ...(group[0]?.features ?? [])];
  if (of === 1) return { ...part, features: named(features) };
  return { ...part, id: places[0]?.id ?? part.id, label: shared(places), places, features: named(features) };
}

/** The labels of a shape's places: all of up to four, else the first and the last. */
function shared(places: readonly Placement[]): string {
  const labels = places.map(({ label }) => label);
  return labels.length <= 4 ? labels.join(', ') : `${labels[0]} to ${labels[labels.length - 1]}`;
}

/** Features that have no name yet get one by kind and number, clear of those that have: `notch-1`, `cut-out-1`. */
function named(features: readonly Feature[]): readonly Feature[] {
  const taken = new Set(features.map(({ id }) => id));
  return features.map((feature) => {
    if (feature.id !== '') return feature;
    let number = 1;
    while (taken.has(`${feature.kind}-${number}`)) number += 1;
    const id = `${feature.kind}-${number}`;
    taken.add(id);
    return { ...feature, id };
  });
}
