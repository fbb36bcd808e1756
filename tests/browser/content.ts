import { cpSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';

const root = new URL('../..', import.meta.url).pathname;

/** Markdown that would run, load, hide or leave the site if it reached a page as written. */
const BARBED = `Before the barbs, 1:87 at 12:30.

<script>window.barbed = 'script'</script>

<img src="x" onerror="window.barbed = 'image'"> and <b onclick="window.barbed = 'click'">bold</b>

<svg onload="window.barbed = 'svg'"><script>window.barbed = 'svg script'</script></svg>

<iframe src="https://elsewhere.example/frame"></iframe>

<style>main { display: none }</style>

<meta http-equiv="refresh" content="0;url=https://elsewhere.example/">

[one](javascript:window.barbed='link') [two](java&#10;script:window.barbed='link') [three](data:text/html,<script>1</script>)

[four][barb]

[barb]: vbscript:window.barbed

<details open ontoggle="window.barbed = 'toggle'"><summary>x</summary></details>

## measure-sheets

Words of the step.

::photo[a wall <script>window.barbed = 'alt'</script> "quoted"]{file=wall.jpg}

After the barbs.
`;

/** An .mdx chapter: code of the author's own, with the components that stand for directives. */
const CODE = `---
steps:
  - id: walk
    do: Walk round the hill
---

Two and two are {2 + 2}, and the side is <Value of="side" /> tall.

<Drawing of="benchwork.plan" />

<Step id="walk">

Take the longest one.

</Step>
`;

async function photo(): Promise<Buffer> {
  const plain = sharp({ create: { width: 1200, height: 800, channels: 3, background: '#7a8b6f' } });
  const exif = { IFD0: { Artist: 'Somebody' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } };
  return plain.jpeg().withExif(exif).toBuffer();
}

/** A copy of the demo notebooks with one more that is full of barbs. */
export async function barbedContent(): Promise<string> {
  const content = mkdtempSync(join(tmpdir(), 'fettlebook-content-'));
  cpSync(join(root, 'content'), content, { recursive: true });
  const barbed = join(content, 'notebooks', 'barbed');
  cpSync(join(content, 'notebooks', 'window-shelf'), barbed, { recursive: true });
  mkdirSync(join(barbed, 'photos'), { recursive: true });
  writeFileSync(join(barbed, 'photos', 'wall.jpg'), await photo());
  const shelf = readFileSync(join(barbed, 'benchwork.md'), 'utf8');
  const front = shelf.slice(0, shelf.indexOf('\n---', 4) + 5);
  writeFileSync(join(barbed, 'benchwork.md'), `${front}\n${BARBED}`);
  writeFileSync(join(barbed, 'scenery.mdx'), CODE);
  const head = readFileSync(join(barbed, 'notebook.md'), 'utf8');
  writeFileSync(
    join(barbed, 'notebook.md'),
    head.replace('title: Window Shelf', 'title: "</title><script>window.barbed = 1</script>"'),
  );
  return content;
}
