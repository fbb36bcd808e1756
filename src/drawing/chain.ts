import { arrowhead, arrowLength, terminalDot } from './arrow.ts';
import type { Mark, Spot } from './mark.ts';
import { alongText, outwardText, type Rule, ruleSpot } from './rule.ts';
import { spread } from './spread.ts';
import { smallText, textWidth } from './text.ts';

/** One link of a chain: from and to along the side in paper mm, and its figure. */
export type Link = { readonly from: number; readonly to: number; readonly text: string };

/** Where an extension line begins at each end of the links, mm outwards from the side's base (inwards negative). */
export type ChainAt = { readonly rule: Rule; readonly v: number; readonly starts: (u: number) => number };

/** Where figures of a chain stand: on the line within their link, or raised on a lead when the link is too short. */
export type ChainPlan = {
  readonly within: readonly { readonly link: Link; readonly u: number }[];
  readonly raised: readonly { readonly link: Link; readonly u: number }[];
  readonly raisedAs: 'along' | 'outward';
  /** true when the raised figures reach beyond the chain's own ends */
  readonly overflows: boolean;
};

const gap = 2;

function middle(link: Link): number {
  return (link.from + link.to) / 2;
}

function standing(
  links: readonly Link[],
  half: (link: Link) => number,
  bounds: { from: number; to: number },
): readonly number[] {
  return spread(
    links.map((link) => ({ at: middle(link), half: half(link) })),
    bounds,
  );
}

/** Places the figures of a chain along its line; no two overlap and no leads cross. */
export function planChain(links: readonly Link[]): ChainPlan {
  const ordered = links.toSorted((a, b) => middle(a) - middle(b));
  const fits = (link: Link) => textWidth(link.text, smallText) + gap <= Math.abs(link.to - link.from);
  const short = ordered.filter((link) => !fits(link));
  const ends = ordered.flatMap((link) => [link.from, link.to]);
  const bounds = { from: Math.min(...ends), to: Math.max(...ends) };
  const along = short.reduce((sum, link) => sum + textWidth(link.text, smallText) + gap, 0);
  const raisedAs = short.length <= 1 || along <= bounds.to - bounds.from ? 'along' : 'outward';
  const half = (link: Link) => (raisedAs === 'along' ? (textWidth(link.text, smallText) + gap) / 2 : 0.92 * smallText);
  const us = standing(short, half, bounds);
  return {
    within: ordered.filter(fits).map((link) => ({ link, u: middle(link) })),
    raised: short.map((link, i) => ({ link, u: us[i] ?? middle(link) })),
    raisedAs,
    overflows: short.reduce((sum, link) => sum + 2 * half(link), 0) > bounds.to - bounds.from,
  };
}

/** How far beyond its line a chain reaches, mm. */
export function chainReach(plan: ChainPlan): number {
  if (plan.raised.length === 0) return 2;
  const longest = Math.max(...plan.raised.map(({ link }) => textWidth(link.text, smallText)));
  return plan.raisedAs === 'along' ? 9.5 : 6.5 + longest;
}

function linkLine({ rule, v }: ChainAt, link: Link): readonly Mark[] {
  const [a, b] = [ruleSpot(rule, link.from, v), ruleSpot(rule, link.to, v)];
  const line: Mark = { kind: 'line', from: a, to: b, pen: 'dimension', role: 'dimension' };
  const roomy = Math.abs(link.to - link.from) >= 2.5 * arrowLength;
  return roomy ? [line, arrowhead(a, b), arrowhead(b, a)] : [line, terminalDot(a), terminalDot(b)];
}

function extensionLines({ rule, v, starts }: ChainAt, links: readonly Link[]): readonly Mark[] {
  const us = [...new Set(links.flatMap((link) => [link.from, link.to]))];
  return us.map((u) => ({
    kind: 'line',
    from: ruleSpot(rule, u, Math.min(starts(u) + 1, v - 1)),
    to: ruleSpot(rule, u, v + 1.5),
    pen: 'dimension',
    role: 'extension',
  }));
}

/** On 'below' and 'right' the line's inner side is above it as the text is read; elsewhere its outer side. */
function lineTextV({ rule, v }: ChainAt): number {
  return rule.side === 'below' || rule.side === 'right' ? v - smallText - 1.4 : v + 1.4;
}

function raisedMarks({ rule, v }: ChainAt, plan: ChainPlan): readonly Mark[] {
  const up = rule.side === 'below' || rule.side === 'right' ? 2 : smallText + 2.2;
  return plan.raised.flatMap(({ link, u }): readonly Mark[] => {
    const lead: readonly Spot[] = [
      ruleSpot(rule, middle(link), v),
      ruleSpot(rule, middle(link), v + up),
      ruleSpot(rule, u, v + up + 2),
    ];
    const text =
      plan.raisedAs === 'along'
        ? alongText(rule, { text: link.text, u, v: v + up + 2.9 })
        : outwardText(rule, { text: link.text, u, v: v + up + 2.9 });
    return [{ kind: 'polyline', points: lead, pen: 'dimension', role: 'leader' }, text];
  });
}

/** The marks of a chain of dimensions on one line. */
export function chainMarks(at: ChainAt, links: readonly Link[]): readonly Mark[] {
  const plan = planChain(links);
  return [
    ...extensionLines(at, links),
    ...links.flatMap((link) => linkLine(at, link)),
    ...plan.within.map(({ link, u }) => alongText(at.rule, { text: link.text, u, v: lineTextV(at) })),
    ...raisedMarks(at, plan),
  ];
}
