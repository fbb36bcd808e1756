import { z } from 'zod';
import { benchworkSchema } from '../core/benchwork/schema.ts';
import { headSchema } from '../core/head.schema.ts';
import { entrySchema } from '../core/log/schema.ts';
import { scenerySchema } from '../core/scenery/schema.ts';
import { stockFileSchema } from '../core/stock/schema.ts';
import { trackSchema } from '../core/track/schema.ts';
import { trainFileSchema } from '../core/track/train.schema.ts';
import { quantityKit } from '../core/units/schema.ts';
import { wiringSchema } from '../core/wiring/schema.ts';

/** An editor's YAML reader takes 2 for a number and true for a yes, where ours takes their text. */
function asEditorsRead(json: z.core.JSONSchema.BaseSchema): void {
  if (json.type !== 'string') return;
  const words = json.enum?.map(String) ?? [];
  if (words.join() === 'true,false') {
    delete json.enum;
    Object.assign(json, { type: 'boolean' });
  } else if (words.length === 0) Object.assign(json, { type: ['string', 'number'] });
}

function editorSchema(schema: z.ZodType, title: string): string {
  const json = z.toJSONSchema(schema, {
    io: 'input',
    target: 'draft-7',
    unrepresentable: 'any',
    override: ({ jsonSchema }) => asEditorsRead(jsonSchema),
  });
  const { $schema, ...rest } = json;
  return `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n`;
}

/** JSON Schema (draft-7) of each kind of file by its name in content/.schema, for editors that help while one types. */
export function editorSchemas(): Readonly<Record<string, string>> {
  const kit = quantityKit(null);
  return {
    'benchwork.json': editorSchema(benchworkSchema(kit), 'Front matter of benchwork.md'),
    'log.json': editorSchema(entrySchema(kit), 'Front matter of a log entry'),
    'notebook.json': editorSchema(headSchema(kit), 'Front matter of notebook.md'),
    'scenery.json': editorSchema(scenerySchema(kit), 'Front matter of scenery.md'),
    'stock.json': editorSchema(stockFileSchema(), 'A file of stock'),
    'track.json': editorSchema(trackSchema(kit), 'Front matter of track.md'),
    'trains.json': editorSchema(trainFileSchema(), 'A file of trains'),
    'wiring.json': editorSchema(wiringSchema(kit), 'Front matter of wiring.md'),
  };
}
