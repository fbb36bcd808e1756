import type { Spot, TextMark } from './mark.ts';
import { lettering, smallText } from './text.ts';

export type Side = 'below' | 'above' | 'left' | 'right';

/**
 * A side of a view that figures stand on: u runs along it in paper coordinates (x below and above, y left and right),
 * v outwards from `base`, both mm.
 */
export type Rule = { readonly side: Side; readonly base: number };

export function ruleSpot({ side, base }: Rule, u: number, v: number): Spot {
  if (side === 'below') return [u, base + v];
  if (side === 'above') return [u, base - v];
  return side === 'left' ? [base - v, u] : [base + v, u];
}

type Lettered = { readonly text: string; readonly u: number; readonly v: number };

/** Text that runs along the side, centred on u, its letters from v to v + their height outwards. */
export function alongText(rule: Rule, { text, u, v }: Lettered, style: Partial<TextMark> = {}): TextMark {
  const rise = rule.side === 'below' || rule.side === 'right' ? smallText : 0;
  const turn = rule.side === 'left' || rule.side === 'right' ? 'right' : 'none';
  return lettering(text, ruleSpot(rule, u, v + rise), { role: 'figure', anchor: 'middle', turn, ...style });
}

/** Text that runs outwards from v, centred on u. */
export function outwardText(rule: Rule, { text, u, v }: Lettered, style: Partial<TextMark> = {}): TextMark {
  const [x, y] = ruleSpot(rule, u, v);
  const half = smallText / 2;
  if (rule.side === 'below')
    return lettering(text, [x + half, y], { role: 'figure', anchor: 'end', turn: 'right', ...style });
  if (rule.side === 'above') return lettering(text, [x + half, y], { role: 'figure', turn: 'right', ...style });
  const anchor = rule.side === 'left' ? 'end' : 'start';
  return lettering(text, [x, y + half], { role: 'figure', anchor, ...style });
}
