import type { ContentFile } from '../../src/reading/content-file.ts';
import { readContent } from '../../src/reading/read.ts';

export function contentFile(path: string, text: string | Uint8Array): ContentFile {
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text;
  return { path, bytes, kind: 'file', size: bytes.length };
}

export const HEAD = '---\ntitle: Test\nshow: mm\nscale: N\nmakers: [one]\nlicence: CC-BY-4.0\n---\n';
export const STOCK = `stock:
  - kind: sheet
    id: ply
    name: Ply
    source: invented
    material: plywood
    thickness: { nominal: 18 mm, listed: 17.7 mm, low: 17.1 mm, high: 18.1 mm }
    sizes: [ { length: 2440 mm, width: 1220 mm, grain: length } ]
    density: 685 kg/m3
`;
export const BENCHWORK = `---
dimensions: { length: 1600 mm, side: 170 mm }
materials: { frame: ply, deck: ply }
benches: [ { id: table, construction: lapped-grid } ]
---
`;

/** A small notebook of which some files are others; an empty text takes a file away. */
export function notebookWith(own: Readonly<Record<string, string>>, slug = 'test'): readonly ContentFile[] {
  const files = { 'notebook.md': HEAD, 'benchwork.md': BENCHWORK, ...own };
  return Object.entries(files).flatMap(([name, text]) =>
    text === '' ? [] : [contentFile(`notebooks/${slug}/${name}`, text)],
  );
}

export function readWith(own: Readonly<Record<string, string>>) {
  return readContent([contentFile('stock/ply.yaml', STOCK), ...notebookWith(own)]);
}
