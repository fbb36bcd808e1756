import type { APIRoute } from 'astro';
import { notebookJson } from '../../../writing/notebook-json.ts';
import { bookOf, pageForEach } from '../../notebooks.ts';

export const getStaticPaths = pageForEach;

export const GET: APIRoute = async ({ params }) => {
  const { notebook } = await bookOf(params.notebook);
  return new Response(notebookJson(notebook), { headers: { 'content-type': 'application/json; charset=utf-8' } });
};
