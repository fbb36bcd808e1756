import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { editorSchemas } from '../../src/reading/editor.schema.ts';

test('the committed editor schemas are those of the code; write-editor-schemas.ts renews them', () => {
  const schemas = editorSchemas();
  expect(readdirSync('content/.schema').sort()).toEqual(Object.keys(schemas).sort());
  for (const [name, text] of Object.entries(schemas)) {
    expect(readFileSync(`content/.schema/${name}`, 'utf8'), name).toBe(text);
  }
});

test('every stock and trains file names its editor schema', () => {
  for (const folder of ['stock', 'trains']) {
    for (const name of readdirSync(`content/${folder}`)) {
      const first = readFileSync(`content/${folder}/${name}`, 'utf8').split('\n')[0];
      expect(first, name).toBe(`# yaml-language-server: $schema=../.schema/${folder}.json`);
    }
  }
});
