import { expect, test } from 'vitest';
import { csv } from '../../src/writing/csv.ts';
import { cutListCsv } from '../../src/writing/cut-list.ts';
import { shoppingCsv } from '../../src/writing/shopping-csv.ts';
import { shelf } from './shelf.ts';

/** RFC 4180 (October 2005), section 2, rules 1, 5, 6 and 7 with the examples printed there; unneeded quotes left out. */
test.each([
  [
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
    'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
  ],
  [
    [
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
    'aaa,"b\r\nbb",ccc\r\nzzz,yyy,xxx\r\n',
  ],
  [[['aaa', 'b"bb', 'ccc']], 'aaa,"b""bb",ccc\r\n'],
  [[['a,b']], '"a,b"\r\n'],
])('%j follows RFC 4180', (rows, text) => {
  expect(csv(rows)).toBe(text);
});

test.each(['=1+1', '+1', '-1', '@sum', '\tx'])('%j is text for a spreadsheet, not a formula', (word) => {
  expect(csv([[word]])).toBe(`'${word}\r\n`);
});

test('numbers keep their sign and a point', () => {
  expect(csv([[-1.5, 0, 1000]])).toBe('-1.5,0,1000\r\n');
});

test('the cut list holds every part to cut now, in mm and inches', () => {
  expect(cutListCsv(shelf)).toBe(
    'label,part,quantity,stock,length mm,width mm,thickness mm,length in,width in,thickness in,grain,cut after measuring\r\n' +
      "'=A,side,2,ply,1200,90,11.733,47.244,3.543,0.462,length,yes\r\n",
  );
});

test('an inch is 25.4 mm exactly (international yard and pound agreement, 1959)', () => {
  const later = { ...shelf, parts: shelf.parts.map((part) => ({ ...part, phase: 'now' as const })) };
  expect(cutListCsv(later)).toContain('"ply, second choice",254,25.4,6.35,10,1,0.25,any,no\r\n');
});

test('the shopping list has every line, its names guarded, and no price where nobody gave one', () => {
  expect(shoppingCsv(shelf)).toBe(
    'quantity,unit,name,stock,length mm,width mm,length in,width in,counted,left over,in hand,waste %,price of one,price,currency,for\r\n' +
      `1,sheet,"'=Plywood, birch",ply,2440,1220,96.063,48.031,,,,4.6,62.5,62.5,EUR,"benchwork, scenery"\r\n` +
      ',piece,Trees,,,,,,,,,,,,,scenery\r\n',
  );
});
