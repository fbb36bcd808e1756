import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const css = readFileSync(new URL('../../src/site/style/tokens.css', import.meta.url), 'utf8');

type Colours = Readonly<Record<string, string>>;

function coloursOf(block: string | undefined): Colours {
  return Object.fromEntries(
    [...(block ?? '').matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map(([, name = '', value = '']) => [name, value]),
  );
}

const light = coloursOf(/^:root \{[^}]*\}/m.exec(css)?.[0]);
const byDevice = coloursOf(/:root:not\(\[data-theme="light"\]\) \{[^}]*\}/.exec(css)?.[0]);
const bySwitch = coloursOf(/^:root\[data-theme="dark"\] \{[^}]*\}/m.exec(css)?.[0]);

/** Relative luminance, WCAG 2.2, definition of the term (sRGB, threshold 0.04045). */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio, WCAG 2.2, definition of the term: 1 to 21. */
function contrast(a: string, b: string): number {
  const [lighter = 0, darker = 0] = [luminance(a), luminance(b)].sort((one, other) => other - one);
  return (lighter + 0.05) / (darker + 0.05);
}

const TEXT = ['ink', 'soft', 'accent', 'halt', 'care', 'note'];
const GROUNDS = ['ground', 'sheet', 'tint'];

describe('contrast', () => {
  test('is 21 for black on white, and 4.54 for #767676 on white (W3C, Understanding 1.4.3)', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });

  test.each([
    ['light', light],
    ['dark', bySwitch],
  ])('of text is at least 4.5 in the %s set (WCAG 2.2, 1.4.3), of edges at least 3 (1.4.11)', (_, colours) => {
    for (const ground of GROUNDS) {
      for (const text of TEXT) {
        const ratio = contrast(colours[text] ?? '', colours[ground] ?? '');
        expect(ratio, `${text} on ${ground}`).toBeGreaterThanOrEqual(4.5);
      }
      expect(contrast(colours.edge ?? '', colours[ground] ?? ''), `edge on ${ground}`).toBeGreaterThanOrEqual(3);
    }
    expect(contrast(colours['on-accent'] ?? '', colours.accent ?? '')).toBeGreaterThanOrEqual(4.5);
  });

  test('is the same whether the device or the switch asks for dark', () => {
    expect(byDevice).toEqual(bySwitch);
    expect(Object.keys(bySwitch).sort()).toEqual(Object.keys(light).sort());
    expect(Object.keys(light).length).toBeGreaterThanOrEqual(12);
  });
});
