import type { BuiltLayer } from '../core/scenery/model.ts';
import { both, type Html, line, listed, partLink, text } from './html.ts';
import { figurePair } from './lengths.ts';
import { areaPair, volumePair } from './measures.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
import type { Fact, Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

function piecesOf(book: Book, { pieces }: BuiltLayer): Html {
  if (pieces.length === 0) return text('none');
  return listed(pieces.map(({ part }) => partLink(book, part, pieceLabel(book, part))));
}

/** The layers from the deck up, with the pieces each is glued from. */
export function layerTable(book: Book): Told {
  return {
    label: 'Layers of foam',
    caption: line(text('From the bottom up; heights over the top of the deck in '), both(UNIT_NAMES)),
    columns: [
      ['Layer'],
      ['From', 'right'],
      ['To', 'right'],
      ['Cut to', 'right'],
      ['Left when carved', 'right'],
      ['Pieces'],
    ],
    rows: (book.notebook.scenery?.layers ?? []).map((layer) => [
      text(String(layer.number)),
      both(figurePair(layer.from)),
      both(figurePair(layer.to)),
      both(areaPair(layer.area)),
      both(volumePair(layer.left)),
      piecesOf(book, layer),
    ]),
  };
}

/** What becomes of the foam. */
export function foamFacts({ notebook }: Book): readonly Fact[] {
  const { scenery } = notebook;
  if (scenery === null) return [];
  const { bought, carved, cut, left } = scenery.volumes;
  return [
    ['Bought, in whole sheets', bought === null ? text('not known: no sheet is laid out') : both(volumePair(bought))],
    ['In the layers as cut', both(volumePair(cut))],
    ['Carved off', both(volumePair(carved))],
    ['Left in the land', both(volumePair(left))],
  ];
}
