import type { APIRoute } from 'astro';
import { drawingFile, drawingSheets, drawingsOf } from '../../../drawings.ts';
import { type Book, bookOf, notebooks } from '../../../notebooks.ts';

type Sheet = { readonly id: string; readonly unit: 'mm' | 'in'; readonly sheet: number };

const UNITS = ['mm', 'in'] as const;

/** `benchwork.plan.mm`, and `benchwork.plan.mm.2` for a second sheet. */
function fileName({ id, sheet, unit }: Sheet): string {
  return sheet === 1 ? `${id}.${unit}` : `${id}.${unit}.${sheet}`;
}

function sheetsOf(book: Book): readonly Sheet[] {
  return drawingsOf(book).flatMap(({ id }) =>
    UNITS.flatMap((unit) => drawingSheets(book, id, unit).map((_, i) => ({ id, unit, sheet: i + 1 }))),
  );
}

export async function getStaticPaths() {
  return (await notebooks()).flatMap((book) =>
    sheetsOf(book).map((sheet) => ({ params: { notebook: book.notebook.slug, file: fileName(sheet) }, props: sheet })),
  );
}

export const GET: APIRoute<Sheet> = async ({ params, props }) => {
  const book = await bookOf(params.notebook);
  return new Response(drawingFile(book, props.id, props), { headers: { 'content-type': 'image/svg+xml' } });
};
