/** Writes drawing.css from pens.ts: run `node src/drawing/make-styles.ts` after a change of the pens. */
import { writeFileSync } from 'node:fs';
import { drawingStyles } from './pens.ts';

writeFileSync(new URL('drawing.css', import.meta.url), drawingStyles);
