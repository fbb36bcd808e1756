import { writeTexts } from './disk.ts';
import { editorSchemas } from './editor.schema.ts';

/** Writes the editors' schemas into a content folder. */
export async function writeEditorSchemas(content: string): Promise<readonly string[]> {
  const texts = editorSchemas();
  await writeTexts(`${content}/.schema`, texts);
  return Object.keys(texts);
}
