import type { ChapterId } from './chapters.ts';
import type { Book } from './notebooks.ts';

/** A block an author may place: its name in .md, its element in .mdx, the heading it stands under. */
export type BlockName = { readonly name: string; readonly element: string; readonly heading: string };

/** Every block with a heading of its own; drawings have captions instead. */
export const BLOCKS: readonly BlockName[] = [
  { name: 'steps', element: 'Steps', heading: 'Steps' },
  { name: 'parts', element: 'Parts', heading: 'Parts' },
  { name: 'cut-list', element: 'CutList', heading: 'Cut list' },
  { name: 'joints', element: 'Joints', heading: 'Joints' },
  { name: 'sheets', element: 'Sheets', heading: 'Sheets' },
  { name: 'tools', element: 'Tools', heading: 'Tools' },
  { name: 'findings', element: 'Findings', heading: 'What the checks found' },
  { name: 'hardware', element: 'Hardware', heading: 'Hardware' },
  { name: 'lines', element: 'Lines', heading: 'The lines' },
  { name: 'set-out', element: 'SetOut', heading: 'Setting out' },
  { name: 'turnouts', element: 'Turnouts', heading: 'Turnouts' },
  { name: 'track-lengths', element: 'TrackLengths', heading: 'Track to cut' },
  { name: 'radii', element: 'Radii', heading: 'Room for larger curves' },
  { name: 'wires', element: 'Wires', heading: 'Wires to cut' },
  { name: 'districts', element: 'Districts', heading: 'Districts' },
  { name: 'reversing', element: 'Reversing', heading: 'Reversing and cuts through the rails' },
  { name: 'holes', element: 'Holes', heading: 'Holes for the bus' },
  { name: 'tests', element: 'Tests', heading: 'Test sheet' },
  { name: 'layers', element: 'Layers', heading: 'Layers of foam' },
  { name: 'water', element: 'Water', heading: 'Water' },
  { name: 'structures', element: 'Structures', heading: 'Buildings' },
  { name: 'cover', element: 'Cover', heading: 'Cover and masses' },
  { name: 'requests', element: 'Requests', heading: 'Cut into other parts' },
];

/** The place of a block on its page. */
export function blockAnchor(name: string): string {
  return `the-${name}`;
}

/** The heading of a block; its name where it has none. */
export function blockHeading(name: string): string {
  return BLOCKS.find((block) => block.name === name)?.heading ?? name;
}

/** The tables of a chapter's own room that are shown even where the author placed them nowhere. */
export function roomBlocks({ notebook }: Book, chapter: ChapterId): readonly string[] {
  const { hardware, scenery, track, wiring } = notebook;
  const some = (name: string, list: readonly unknown[]) => (list.length > 0 ? [name] : []);
  switch (chapter) {
    case 'benchwork':
      return some('hardware', hardware);
    case 'track':
      if (track === null) return [];
      return ['lines', ...some('set-out', track.setOut), ...some('turnouts', track.turnouts), 'track-lengths', 'radii'];
    case 'wiring':
      return wiring === null ? [] : ['wires', 'districts', 'reversing', 'holes', ...some('tests', wiring.tests)];
    case 'scenery':
      if (scenery === null) return [];
      return [
        ...some('layers', scenery.layers),
        ...some('water', scenery.water),
        ...some('structures', scenery.structures),
        'cover',
        'requests',
      ];
  }
}
