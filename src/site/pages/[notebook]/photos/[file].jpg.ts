import type { APIRoute } from 'astro';
import { bookOf, notebooks } from '../../../notebooks.ts';
import { photosPublished, reencoded } from '../../../photos.ts';

export async function getStaticPaths() {
  const books = await notebooks();
  const all = await Promise.all(books.map(async (book) => ({ book, photos: await photosPublished(book) })));
  return all.flatMap(({ book, photos }) =>
    photos.flatMap(({ file, sizes }) =>
      sizes.map(({ name, width }) => ({
        params: { notebook: book.notebook.slug, file: name.replace(/\.jpg$/, '') },
        props: { file, width },
      })),
    ),
  );
}

export const GET: APIRoute<{ file: string; width: number }> = async ({ params, props }) => {
  const bytes = await reencoded(await bookOf(params.notebook), props.file, props.width);
  return new Response(new Uint8Array(bytes), { headers: { 'content-type': 'image/jpeg' } });
};
