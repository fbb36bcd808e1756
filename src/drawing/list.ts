import type { Part } from '../core/stock/part.ts';
import { bayEntries } from './bays/bay-drawing.ts';
import type { DrawingBook } from './book.ts';
import { fixEntries } from './fixes/fix-map.ts';
import { type AssemblyPicture, assemblyPictures } from './isometric/assembly-drawing.ts';
import { type JointGroup, jointGroups, jointTitle } from './joint-drawing.ts';
import { landEntries } from './scenery/land-drawings.ts';
import { trackEntries } from './track/track-drawings.ts';
import { wiringEntries } from './wiring/wiring-drawings.ts';

export type DrawingKind =
  | 'plan'
  | 'elevation'
  | 'section'
  | 'part'
  | 'sheet'
  | 'joint'
  | 'assembly'
  | 'fixes'
  | 'wiring';

/** A drawing that can be laid out: its id, what it shows, and the title under which it is filed. */
export type DrawingEntry = {
  readonly id: string;
  readonly kind: DrawingKind;
  readonly chapter: string;
  /** id of the part, bench, joint or stock it is of */
  readonly of: string | null;
  readonly title: string;
};

/** "Part S1, side front", but "Parts E1, E2, end": the id of several pieces is that of the first and would say where it alone stands. */
export function partTitle({ id, label, role, places }: Pick<Part, 'id' | 'label' | 'role' | 'places'>): string {
  const spoken = (words: string) => words.replaceAll('.', ' ').replaceAll('-', ' ');
  return places.length > 1 ? `Parts ${label}, ${spoken(role)}` : `Part ${label}, ${spoken(id)}`;
}

function benchEntries(notebook: DrawingBook): readonly DrawingEntry[] {
  return notebook.benches.flatMap((bench, index): readonly DrawingEntry[] => {
    const stem = index === 0 ? 'benchwork' : `benchwork.${bench.id}`;
    const base = { chapter: 'benchwork', of: bench.id };
    return [
      { ...base, id: `${stem}.plan`, kind: 'plan', title: `Plan of ${bench.id}` },
      ...(notebook.parts.some((part) => part.bench === bench.id && part.role === 'deck')
        ? [{ ...base, id: `${stem}.deck`, kind: 'plan' as const, title: `Deck of ${bench.id}` }]
        : []),
      { ...base, id: `${stem}.front`, kind: 'elevation', title: `Front of ${bench.id}` },
      { ...base, id: `${stem}.left`, kind: 'elevation', title: `Left end of ${bench.id}` },
      { ...base, id: `${stem}.section`, kind: 'section', title: `Section through ${bench.id}` },
    ];
  });
}

/** Every drawing the notebook has, in the order of its chapters. */
export function listDrawings(notebook: DrawingBook): readonly DrawingEntry[] {
  return entriesOf({ notebook, pictures: assemblyPictures(notebook), joints: jointGroups(notebook) });
}

/** A notebook with what its list of drawings is made from. */
export type Listed = {
  readonly notebook: DrawingBook;
  readonly pictures: readonly AssemblyPicture[];
  readonly joints: readonly JointGroup[];
};

/** The list where pictures and groups of joints are at hand. */
export function entriesOf({ notebook, pictures, joints: groups }: Listed): readonly DrawingEntry[] {
  const parts = notebook.parts.map(
    (part): DrawingEntry => ({
      id: `part.${part.id}`,
      kind: 'part',
      chapter: part.chapter,
      of: part.id,
      title: partTitle(part),
    }),
  );
  const sheets = notebook.sheets.map(
    (sheet, index): DrawingEntry => ({
      id: `sheet.${index + 1}`,
      kind: 'sheet',
      chapter: 'benchwork',
      of: sheet.stock,
      title: `Cutting sheet ${index + 1}, ${sheet.stock}`,
    }),
  );
  const joints = groups.map(
    (group): DrawingEntry => ({
      id: `joint.${group.first.id}`,
      kind: 'joint',
      chapter: 'benchwork',
      of: group.first.id,
      title: jointTitle(notebook, group),
    }),
  );
  const assembly = pictures.map(
    ({ id, bench, title }): DrawingEntry => ({ id, kind: 'assembly', chapter: 'benchwork', of: bench, title }),
  );
  return [
    ...benchEntries(notebook),
    ...bayEntries(notebook),
    ...trackEntries(notebook),
    ...landEntries(notebook),
    ...wiringEntries(notebook),
    ...parts,
    ...joints,
    ...sheets,
    ...assembly,
    ...fixEntries(notebook),
  ];
}
