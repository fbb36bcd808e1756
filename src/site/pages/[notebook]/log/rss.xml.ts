import type { APIRoute } from 'astro';
import { text } from '../../../html.ts';
import { entrySummary } from '../../../log-words.ts';
import { bookOf, pageForEach } from '../../../notebooks.ts';
import { at } from '../../../paths.ts';

/** A feed needs whole addresses, so there is one only where the site's own is known. */
export async function getStaticPaths() {
  return import.meta.env.SITE ? pageForEach() : [];
}

export const GET: APIRoute = async ({ params, site }) => {
  const { notebook } = await bookOf(params.notebook);
  const address = (path: string) => text(new URL(path, site).href);
  const items = [...notebook.log].reverse().map((entry) => {
    const where = address(at(notebook.slug, 'log', entry.id));
    const day = new Date(`${entry.date}T12:00:00Z`).toUTCString();
    return `<item><title>${text(entry.title)}</title><link>${where}</link><guid>${where}</guid><pubDate>${day}</pubDate><description>${text(entrySummary(entry))}</description></item>`;
  });
  const about = `<title>${text(`${notebook.title}: log`)}</title><link>${address(at(notebook.slug, 'log'))}</link><description>${text(`What happened on ${notebook.title}.`)}</description>`;
  const feed = `<?xml version="1.0" encoding="UTF-8"?>\n<rss version="2.0"><channel>${about}${items.join('')}</channel></rss>\n`;
  return new Response(feed, { headers: { 'content-type': 'application/rss+xml; charset=utf-8' } });
};
