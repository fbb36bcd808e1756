import type { Request } from '../core/stock/part.ts';
import type { LaidTurnout } from '../core/track/laid.ts';
import type { TurnoutForm } from '../core/track/turnout.ts';
import { below, both, type Html, line, partLink, text } from './html.ts';
import { figuresPair, lengthPair, type Pair, sizePair } from './lengths.ts';
import { angleWords } from './measures.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
import type { Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

function withRadius(words: string, radius: number | null): Html {
  return radius === null ? text(words) : line(text(`${words}, radius `), both(lengthPair(radius)));
}

/** What kind of turnout it is, as it was told. */
export function formWords(form: TurnoutForm): Html {
  switch (form.kind) {
    case 'frog':
      return text(`frog 1:${form.number}, to the ${form.hand}`);
    case 'template':
      return withRadius(`measured, ${angleWords(form.angle)} to the ${form.hand}`, form.radius);
    case 'curved':
      return line(
        text(`curved to the ${form.hand}, radii `),
        both(figuresPair([form.outer.radius])),
        text(' and '),
        both(lengthPair(form.inner.radius)),
      );
    case 'wye':
      return withRadius(`wye of ${angleWords(form.angle)}`, form.radius);
    case 'three-way':
      return withRadius(`three ways, ${angleWords(form.angle)} to each hand`, form.radius);
    case 'crossing':
      return text(`crossing of ${angleWords(form.angle)}, to the ${form.hand}`);
    case 'slip':
      return text(`crossing of ${angleWords(form.angle)} with ${form.slips === 'both' ? 'two slips' : 'one slip'}`);
  }
}

function point(x: number, y: number): Pair {
  const pair = figuresPair([x, y]);
  return { mm: pair.mm.replace(' × ', ', '), in: pair.in.replace(' × ', ', ') };
}

function whatOf({ turnout }: LaidTurnout): Html {
  const frog = turnout.frog === null ? [] : [below(text(`${turnout.frog} frog`))];
  return line(formWords(turnout.form), ...frog);
}

function whereOf({ enter, enters, leaves, line: own, place }: LaidTurnout): Html {
  const along = line(
    text(`on ${own}, `),
    both(figuresPair([enters])),
    text(' to '),
    both(figuresPair([leaves])),
    text(`, entered at its ${enter === 'points' ? 'points' : `${enter} end`}`),
  );
  return line(both(point(place.x, place.y)), below(along));
}

function motorOf({ turnout }: LaidTurnout): Html {
  const { motor } = turnout;
  if (motor === null) return text('none: thrown by hand');
  return line(
    both(sizePair([motor.along, motor.across])),
    below(line(both(lengthPair(motor.below)), text(' down from the underside of the deck'))),
  );
}

function slotWords(book: Book, { at: [x, y], kind, part, size }: Request): Html {
  const askew = kind === 'cut-out' ? 'along the track by across it, ' : '';
  const where = line(
    text(`${askew}at `),
    both(point(x, y)),
    text(' in '),
    partLink(book, part, pieceLabel(book, part)),
  );
  return line(both(sizePair(size)), below(where));
}

function slotOf(book: Book, { id, turnout }: LaidTurnout): Html {
  const slot = book.notebook.track?.requests.find(({ by }) => by === id);
  if (slot !== undefined) return slotWords(book, slot);
  return text(turnout.motor === null ? 'none' : 'none: no deck lies under its throw bar');
}

/** Turnouts with what they ask of the bench. */
export function turnoutTable(book: Book): Told {
  return {
    label: 'Turnouts',
    caption: line(
      text(
        'Places to the right and to the back from the zero of the plan; the motor’s room along the track by across it, the slot left to right by front to back, in ',
      ),
      both(UNIT_NAMES),
    ),
    columns: [['Turnout'], ['What'], ['Its points lie at'], ['Room for the motor'], ['Slot for the throw bar']],
    rows: (book.notebook.track?.turnouts ?? []).map((laid) => [
      text(laid.id),
      whatOf(laid),
      whereOf(laid),
      motorOf(laid),
      slotOf(book, laid),
    ]),
  };
}
