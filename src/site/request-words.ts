import type { Request } from '../core/stock/part.ts';
import { below, both, type Html, line, partLink, strong, text } from './html.ts';
import { figuresPair, lengthPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
import type { Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

/** What a chapter asks of other parts; on the benchwork's own page, what all others ask of it. */
export function requestsOf({ notebook }: Book, chapter: string): readonly Request[] {
  return chapter === 'benchwork'
    ? notebook.requests
    : notebook.requests.filter((request) => request.chapter === chapter);
}

/** The size that a rule of thumb limits: a notch's depth, a hole's diameter; mm. */
function limited({ kind, size: [along, across] }: Request): number {
  return kind === 'notch' ? across : along;
}

function sizeOf(request: Request): Html {
  const { kind, size } = request;
  return kind === 'hole' ? line(both(figuresPair([size[0]])), text(' across')) : both(figuresPair(size));
}

/** Within the rule of thumb or beyond it, or what no rule is known for. */
export function limitWords(request: Request): Html {
  const { kind, limit } = request;
  if (limit === null) return text('no rule known');
  const most = line(both(lengthPair(limit)), text(kind === 'notch' ? ' deep' : ' across'));
  return limited(request) > limit + 1e-6 ? line(strong('beyond '), most) : line(text('within '), most);
}

/** Holes, notches and cut-outs in parts of other chapters. */
export function requestTable(book: Book, chapter: string): Told {
  return {
    label: 'Cut into other parts',
    caption: line(
      text(
        'Sizes along the part by across it, a notch’s depth last; middles to the right and to the back from the zero of the plan, in ',
      ),
      both(UNIT_NAMES),
    ),
    columns: [['Part'], ['What'], ['Size', 'right'], ['Middle', 'right'], ['Rule of thumb']],
    rows: requestsOf(book, chapter).map((request) => {
      const [x, y] = request.at;
      const middle = [figuresPair([x]), figuresPair([y])] as const;
      return [
        partLink(book, request.part, pieceLabel(book, request.part)),
        line(text(request.kind), below(text(`for ${request.by}`))),
        sizeOf(request),
        line(both(middle[0]), text(', '), both(middle[1])),
        limitWords(request),
      ];
    }),
  };
}
