import { describe, expect, test } from 'vitest';
import { howTo, scriptSafe } from '../../src/site/how-to.ts';
import { notebook, prose } from './fixture.ts';

describe('structured data', () => {
  test('holds the steps of a chapter in order', () => {
    const data = JSON.parse(howTo({ notebook, prose, photos: '' }, 'benchwork', 'Benchwork') ?? '{}');
    expect(data['@type']).toBe('HowTo');
    expect(data.step.map((step: { name: string }) => step.name)).toEqual([
      'Measure the sheets',
      'Rip the frame strips',
      'Glue the grid',
    ]);
    expect(data.step[1].text.replaceAll('\u00A0', ' ')).toContain('Set the fence to 170 mm.');
  });

  test('is none for a chapter without steps', () => {
    expect(howTo({ notebook, prose, photos: '' }, 'scenery', 'Scenery')).toBe(null);
  });

  test('cannot end its script element, and is still the same data', () => {
    const words = '</script><!-- \u2028 & "x"';
    expect(scriptSafe(words)).not.toMatch(/[<>&\u2028]/);
    expect(JSON.parse(scriptSafe(words))).toBe(words);
  });
});
