import type { Finding } from '../finding.ts';
import { say } from '../units/say.ts';
import type { LogRecord } from './record.ts';

/** What a notebook holds of its makers' home; `room` is true when the cover has an outline of it. */
export type Private = { readonly records: readonly LogRecord[]; readonly room: boolean };

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** Photos that are shown; one kept private in any entry is shown nowhere. */
function shownPhotos(records: readonly LogRecord[]): number {
  const photos = records.flatMap((record) => record.photos);
  const kept = new Set(photos.filter((photo) => photo.private).map((photo) => photo.file));
  return new Set(photos.map((photo) => photo.file).filter((file) => !kept.has(file))).size;
}

/** A warning before a room, faces or dates go public: once on the web, they stay there. Nothing for a notebook without any. */
export function publicityFindings({ records, room }: Private): Finding[] {
  const photos = shownPhotos(records);
  const shown = [
    ...(room ? ["the room's outline and its doors"] : []),
    ...(photos > 0 ? [`${counted(photos, 'photo')}, with whatever faces are in them`] : []),
    ...(records.length > 0 ? [`the days of ${counted(records.length, 'entry').replace(/ys$/, 'ies')}`] : []),
  ];
  if (shown.length === 0) return [];
  return [
    {
      rule: 'goes-public',
      level: 'note',
      where: 'notebook',
      chapter: 'benchwork',
      what: say`If this notebook is published, everyone can see ${shown.join('; ')}.`,
      figure: null,
      limit: null,
      unit: 'count',
      mend: say`Ask everyone who is in it; mark photos 'private: true', and leave the room out, where anyone says no.`,
      source: 'common practice, no source',
      accepted: null,
    },
  ];
}
