import { existsSync } from 'node:fs';
import { cp, mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { pid } from 'node:process';
import { slugProblem } from '../reading/names.ts';
import { type Desk, type ExitCode, refuse } from './desk.ts';

const pattern = 'window-shelf';

/** `my-table` as a title: My Table. */
function titleOf(slug: string): string {
  return slug
    .split('-')
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join(' ');
}

/** A content folder of one's own gets the stock and trains the pattern is made of. */
async function bringGoods(desk: Desk): Promise<void> {
  for (const goods of ['stock', 'trains']) {
    const [from, to] = [join(desk.root, 'content', goods), join(desk.content, goods)];
    if (existsSync(from) && !existsSync(to)) await cp(from, to, { recursive: true });
  }
}

async function copyPattern(desk: Desk, slug: string): Promise<void> {
  const folder = join(desk.content, 'notebooks');
  await mkdir(folder, { recursive: true });
  const half = join(folder, `.${slug}-${pid}`);
  try {
    await cp(join(desk.root, 'content', 'notebooks', pattern), half, { recursive: true });
    const head = join(half, 'notebook.md');
    const text = await readFile(head, 'utf8');
    // the log is its author's: nobody else's days are copied
    await rm(join(half, 'log'), { recursive: true, force: true });
    await writeFile(head, text.replace(/^title:.*$/m, `title: "${titleOf(slug)}"`));
    await rename(half, join(folder, slug));
  } finally {
    await rm(half, { recursive: true, force: true });
  }
}

/** Starts a notebook as a copy of the smallest one; refuses names that can't be a folder's and names that are taken. */
export async function startBook(desk: Desk, slug: string): Promise<ExitCode> {
  const problem = slugProblem(slug, 'notebooks');
  if (problem !== null) return refuse(desk, problem);
  const target = join(desk.content, 'notebooks', slug);
  if (existsSync(target)) {
    return refuse(desk, {
      what: `There is a notebook called ${slug} already.`,
      mend: 'choose another name; nothing was changed',
    });
  }
  await bringGoods(desk);
  await copyPattern(desk, slug);
  const way = relative(process.cwd(), target);
  const shown = way.startsWith('..') ? target : way;
  desk.write(`Copied ${pattern} to ${shown}. Change the numbers in benchwork.md, then: npm run check -- ${slug}\n`);
  return 0;
}
