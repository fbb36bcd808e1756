/**
 * Writes font-widths.data.ts from the shipped font's woff files: run `node src/drawing/make-font-widths.ts` after a
 * change of font. Tables as in the OpenType specification (head, hhea, hmtx, cmap format 4, OS/2).
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';

type Face = { readonly unitsPerEm: number; readonly capHeight: number; readonly widths: ReadonlyMap<number, number> };

/** WOFF 1.0, section 4: the table directory starts at byte 44, 20 bytes an entry. */
function tableOf(file: Buffer, tag: string): Buffer {
  for (let entry = 44; entry < 44 + 20 * file.readUInt16BE(12); entry += 20) {
    if (file.toString('latin1', entry, entry + 4) !== tag) continue;
    const offset = file.readUInt32BE(entry + 4);
    const packed = file.readUInt32BE(entry + 8);
    const bytes = file.subarray(offset, offset + packed);
    return packed < file.readUInt32BE(entry + 12) ? inflateSync(bytes) : bytes;
  }
  throw new Error(`the font has no ${tag} table`);
}

function format4(cmap: Buffer): Buffer {
  for (let entry = 4; entry < 4 + 8 * cmap.readUInt16BE(2); entry += 8) {
    const table = cmap.subarray(cmap.readUInt32BE(entry + 4));
    if (table.readUInt16BE(0) === 4) return table;
  }
  throw new Error('the font has no cmap of format 4');
}

function glyphAt(table: Buffer, segment: number, code: number): number {
  const segments = table.readUInt16BE(6) / 2;
  const delta = table.readInt16BE(16 + 2 * segments + 2 * segments + 2 * segment);
  const place = 16 + 6 * segments + 2 * segment;
  const range = table.readUInt16BE(place);
  if (range === 0) return (code + delta) & 0xffff;
  const glyph = table.readUInt16BE(place + range + 2 * (code - table.readUInt16BE(16 + 2 * segments + 2 * segment)));
  return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
}

function readFace(path: URL): Face {
  const file = readFileSync(path);
  const table = format4(tableOf(file, 'cmap'));
  const hmtx = tableOf(file, 'hmtx');
  const metrics = tableOf(file, 'hhea').readUInt16BE(34);
  const segments = table.readUInt16BE(6) / 2;
  const widths = new Map<number, number>();
  for (let segment = 0; segment < segments; segment++) {
    const last = table.readUInt16BE(14 + 2 * segment);
    for (let code = table.readUInt16BE(16 + 2 * segments + 2 * segment); code <= last && code < 0xffff; code++) {
      const glyph = glyphAt(table, segment, code);
      if (glyph > 0) widths.set(code, hmtx.readUInt16BE(4 * Math.min(glyph, metrics - 1)));
    }
  }
  return {
    unitsPerEm: tableOf(file, 'head').readUInt16BE(18),
    capHeight: tableOf(file, 'OS/2').readInt16BE(88),
    widths,
  };
}

function faceText(name: string, weight: number): string {
  const files = ['latin-ext', 'latin'].map(
    (set) =>
      new URL(
        `../../node_modules/@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-${set}-${weight}-normal.woff`,
        import.meta.url,
      ),
  );
  const faces = files.map(readFace);
  const all = new Map(faces.flatMap((face) => [...face.widths]));
  const byWidth = new Map<number, string>();
  for (const [code, width] of [...all].sort((a, b) => a[0] - b[0])) {
    byWidth.set(width, (byWidth.get(width) ?? '') + String.fromCharCode(code));
  }
  const rows = [...byWidth]
    .sort((a, b) => a[0] - b[0])
    .map(([width, letters]) => `    [${width}, ${JSON.stringify(letters)}],`);
  const { unitsPerEm, capHeight } = faces[1] ?? { unitsPerEm: 1000, capHeight: 0 };
  return `export const ${name}: FontFace = {\n  unitsPerEm: ${unitsPerEm},\n  capHeight: ${capHeight},\n  widths: [\n${rows.join('\n')}\n  ],\n};\n`;
}

const head = `// Made by make-font-widths.ts from Atkinson Hyperlegible (SIL Open Font License 1.1); not edited by hand.

/** Advance widths in font units, each with the characters that have it. */
export type FontFace = {
  readonly unitsPerEm: number;
  readonly capHeight: number;
  readonly widths: readonly (readonly [number, string])[];
};
`;
writeFileSync(
  new URL('font-widths.data.ts', import.meta.url),
  [head, faceText('regular', 400), faceText('bold', 700)].join('\n'),
);
