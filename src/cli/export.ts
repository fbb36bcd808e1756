import { existsSync, readdirSync } from 'node:fs';
import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { Notebook } from '../core/notebook.ts';
import { drawingSet } from '../drawing/layout.ts';
import { renderDrawing, standaloneDrawing } from '../drawing/render.ts';
import { plainDocument } from '../drawing/window.ts';
import { printProblem } from '../reading/print.ts';
import { cutListCsv } from '../writing/cut-list.ts';
import { notebookJson } from '../writing/notebook-json.ts';
import { noSuchBook, onlyOne, openBooks } from './books.ts';
import { type Desk, type ExitCode, refuse } from './desk.ts';

export type ExportWish = { readonly slug: string; readonly out: string };

type Written = { readonly name: string; readonly text: string };

function drawingFiles(notebook: Notebook): readonly Written[] {
  const paper = notebook.show === 'mm' ? 'A3' : 'Tabloid';
  const { entries, layOut } = drawingSet(notebook);
  return entries.flatMap(({ id }) => {
    const { sheets } = layOut(id, { unit: notebook.show, paper });
    return sheets.map((sheet, i) => {
      const number = sheets.length === 1 ? '' : `-${i + 1}`;
      const name = `${id.replace(/[^\w.-]/g, '-')}${number}.svg`;
      return { name: join('drawings', name), text: `${standaloneDrawing(renderDrawing(sheet, plainDocument()))}\n` };
    });
  });
}

/** Everything `export` writes about a notebook, by file name. */
export function exportFiles(notebook: Notebook): readonly Written[] {
  return [
    { name: 'notebook.json', text: notebookJson(notebook) },
    { name: 'cut-list.csv', text: cutListCsv(notebook) },
    ...drawingFiles(notebook),
  ];
}

/** A folder that is empty, absent, or an export from before. */
function mayFill(out: string): boolean {
  if (!existsSync(out)) return true;
  const there = readdirSync(out);
  return there.length === 0 || there.includes('notebook.json');
}

/** Writes one notebook's figures, cut list and drawings into a folder; drawings of an earlier export go. */
export async function exportBook(desk: Desk, { slug, out }: ExportWish): Promise<ExitCode> {
  const folder = resolve(out);
  if (!mayFill(folder)) {
    return refuse(desk, {
      what: `${out} holds something else than an export.`,
      mend: 'name an empty or a new folder after --out',
    });
  }
  const all = await openBooks(desk.content, join(desk.root, 'content'));
  if (!all.slugs.includes(slug)) return refuse(desk, noSuchBook(all, slug));
  const { problems, notebooks } = onlyOne(all, slug);
  const [notebook] = notebooks;
  if (problems.length > 0 || notebook === undefined) {
    desk.warn(`${problems.map(printProblem).join('\n')}\nNothing was exported: ${problems.length} to mend.\n`);
    return 1;
  }
  const files = exportFiles(notebook);
  await rm(join(folder, 'drawings'), { recursive: true, force: true });
  await mkdir(join(folder, 'drawings'), { recursive: true });
  for (const { name, text } of files) await writeFile(join(folder, name), text);
  desk.write(`Exported ${slug}: ${files.length} files in ${out}\n`);
  return 0;
}
