import { plugTag } from '../core/wiring/bench-joints.ts';
import type { Connector } from '../core/wiring/connectors.ts';
import { holeTag } from '../core/wiring/holes.ts';
import type { SmallPart } from '../core/wiring/small-part.ts';
import { pairNumber } from '../core/wiring/wire.ts';
import { type Html, line, text } from './html.ts';
import type { Book } from './notebooks.ts';
import type { Told } from './table.ts';
import { plainName } from './words.ts';

function forWhat({ notebook }: Book, { kind, of }: SmallPart): Html {
  if (kind === 'supply') return text('the whole layout');
  if (kind === 'joint') return text('bus, in every bay');
  if (kind === 'plug') return text(of.map((id) => `pair ${pairNumber(notebook.wiring?.wires ?? [], id)}`).join(', '));
  if (kind === 'clip') return text('bus and thin wires, in every bay');
  return text(of.map((id) => (kind === 'grommet' ? holeTag(id) : plainName(id))).join(', '));
}

/** What is bought by the piece for the wires; null where nothing is. */
export function smallPartTable(book: Book): Told | null {
  const parts = book.notebook.wiring?.smallParts ?? [];
  if (parts.length === 0) return null;
  return {
    label: 'Small parts',
    caption: text('Small parts of the wiring; they are on the shopping list too'),
    columns: [['Part'], ['How many', 'right'], ['For']],
    rows: parts.map((part) => [text(part.name), text(String(part.quantity)), forWhat(book, part)]),
  };
}

/** The pins of every plug between benches, one table a plug. */
export function plugTables({ notebook }: Book): readonly Told[] {
  return (notebook.wiring?.connectors ?? []).map((plug) => ({
    label: `Pins between ${between(plug)}`,
    caption: line(
      text(`Plug ${plugTag(plug.id)} between ${between(plug)}: the same pin, wire and colour on both sides`),
    ),
    columns: [['Pin', 'right'], ['Wire'], ['Goes on as'], ['Colour']],
    rows: plug.pins.map(({ colour, onto, pin, wire }) => [
      text(String(pin)),
      ...[wire, onto].map((one) => text(notebook.wiring?.wires.find(({ id }) => id === one)?.label ?? one)),
      text(colour),
    ]),
  }));
}

function between({ between: [one, other] }: Connector): string {
  return `${plainName(one)} and ${plainName(other)}`;
}
