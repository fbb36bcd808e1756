import type { BuiltWater } from '../core/scenery/model.ts';
import { both, type Html, line, listed, partLink, text } from './html.ts';
import { lengthPair, sizePair } from './lengths.ts';
import { areaPair, kilograms, volumePair } from './measures.ts';
import type { Book } from './notebooks.ts';
import { partNamed, pieceLabel } from './parts.ts';
import type { Fact } from './table.ts';
import { counted, duration } from './words.ts';

/** A height over the top of the deck, most often under it. */
function height(mm: number): Html {
  if (mm === 0) return text('at the top of the deck');
  return line(both(lengthPair(Math.abs(mm))), text(` ${mm < 0 ? 'below' : 'above'} the top of the deck`));
}

/** How it is poured, and how long it cures in all. */
export function pourWords({ pours: { count, each, wait } }: Pick<BuiltWater, 'pours'>): Html {
  return line(
    text(`${counted(count, 'pour')} of `),
    both(lengthPair(each)),
    text(`, then ${duration(wait / count)} of curing after each: ${duration(wait)} in all. The label decides`),
  );
}

function levelWords({ level: { dam, deeper, lean, length, room } }: BuiltWater): Html {
  return line(
    text(`a lean of 1 in ${Math.round(1 / lean)}, which nobody sees, makes the low end `),
    both(lengthPair(deeper)),
    text(' deeper over its '),
    both(lengthPair(length)),
    text('; the dam has to be '),
    both(lengthPair(dam)),
    text(' tall, and there are '),
    both(lengthPair(room)),
  );
}

function underWords(book: Book, { under }: BuiltWater): Html {
  if (under.length === 0) return text('nothing');
  return listed(
    under.map(({ cut, deep, id, role }) => {
      const named =
        partNamed(book, id) === null ? text(id.replaceAll('.', ' ')) : partLink(book, id, pieceLabel(book, id));
      const what = cut ? ' (cut ' : ', which cannot be cut (';
      return line(text(`${role.replaceAll('-', ' ')} `), named, text(what), both(lengthPair(deep)), text(' deep)'));
    }),
  );
}

/** `113 mm to the left`, on the bench's plane. */
function moveWords([x, y]: readonly [number, number]): Html {
  const ways = [
    ...(x === 0 ? [] : [line(both(lengthPair(Math.abs(x))), text(` to the ${x < 0 ? 'left' : 'right'}`))]),
    ...(y === 0 ? [] : [line(both(lengthPair(Math.abs(y))), text(` to the ${y < 0 ? 'front' : 'back'}`))]),
  ];
  return ways.length === 0 ? text('it does already') : listed(ways);
}

function clearFacts({ clear }: BuiltWater): readonly Fact[] {
  if (clear === null) return [];
  const { move, smaller } = clear;
  const size = smaller === null ? null : [smaller.high[0] - smaller.low[0], smaller.high[1] - smaller.low[1]];
  return [
    ['Would cut only the deck, moved by', move === null ? text('no move found') : moveWords(move)],
    ['Or no larger than', size === null ? text('no size found') : both(sizePair(size))],
  ];
}

/** One water in figures. */
export function waterFacts(book: Book, water: BuiltWater): readonly Fact[] {
  const { area, depth, floor, mass, mixed, surface, underside, volume } = water;
  return [
    ['Surface', height(surface)],
    ['Underside of its floor', height(underside)],
    ['Depth, on a floor of', line(both(lengthPair(depth)), text(', on '), both(lengthPair(floor)))],
    ['Area', both(areaPair(area))],
    [
      'Volume',
      line(both(volumePair(volume)), text('; mix '), both(volumePair(mixed)), text(', for what stays in the cups')),
    ],
    ['Pours', pourWords(water)],
    ['Out of level', levelWords(water)],
    ['Mass with its floor', text(kilograms(mass))],
    ['Lies over', underWords(book, water)],
    ...clearFacts(water),
  ];
}
