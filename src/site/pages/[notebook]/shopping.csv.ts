import type { APIRoute } from 'astro';
import { shoppingCsv } from '../../../writing/shopping-csv.ts';
import { bookOf, pageForEach } from '../../notebooks.ts';

export const getStaticPaths = pageForEach;

export const GET: APIRoute = async ({ params }) => {
  const { notebook } = await bookOf(params.notebook);
  return new Response(shoppingCsv(notebook), { headers: { 'content-type': 'text/csv; charset=utf-8' } });
};
