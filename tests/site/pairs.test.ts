import { describe, expect, test } from 'vitest';
import { length, say } from '../../src/core/units/say.ts';
import { both, link, text } from '../../src/site/html.ts';
import { figurePair, lengthPair, sentencePair, sizePair } from '../../src/site/lengths.ts';

/** Figures hold together by no-break spaces; the tests read them as plain ones. */
function plain(words: string): string {
  return words.replaceAll('\u00A0', ' ');
}

describe('a length is written in both units', () => {
  // 1 in is 25.4 mm exactly (international yard and pound agreement, 1959).
  test.each([
    [25.4, '25.4 mm', '1 in'],
    [190.5, '190.5 mm', '7 1/2 in'],
    [3.175, '3.2 mm', '1/8 in'],
    [0, '0 mm', '0 in'],
    [1524, '1524 mm', '60 in'],
  ])('%f mm', (mm, metric, inches) => {
    expect(plain(lengthPair(mm).mm)).toBe(metric);
    expect(plain(lengthPair(mm).in)).toBe(inches);
  });

  test('without its unit in a column, as one size, and in a sentence', () => {
    expect(plain(figurePair(50.8).in)).toBe('2');
    expect(plain(sizePair([1600, 170]).mm)).toBe('1600 × 170 mm');
    expect(plain(sentencePair(say`Set the fence to ${length(50.8)}.`).in)).toBe('Set the fence to 2 in.');
  });
});

describe('markup within a line', () => {
  test('shows one unit of two, and words once when both are the same', () => {
    expect(both({ mm: '1 mm', in: '1/32 in' })).toBe(
      '<span class="length"><span class="mm">1 mm</span><span class="in">1/32 in</span></span>',
    );
    expect(both({ mm: 'N', in: 'N' })).toBe('N');
  });

  test('escapes what an author wrote', () => {
    expect(text('<b>&"')).toBe('&lt;b&gt;&amp;&quot;');
    expect(link('/a"b/', '<i>')).toBe('<a href="/a&quot;b/">&lt;i&gt;</a>');
  });
});
