import { writeEditorSchemas } from './editor-schema.ts';

/** `node src/reading/write-editor-schemas.ts [content]` after a schema has changed. */
const [, , content = 'content'] = globalThis.process.argv;
await writeEditorSchemas(content);
