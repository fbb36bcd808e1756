import type { Finding } from '../../finding.ts';

/** What stock lacks: told once, however many places want it. */
const LACKS: readonly string[] = ['hardware-not-in-stock', 'metal-screw-not-in-stock', 'no-bolt-fits', 'no-screw-fits'];

/** Findings of what stock lacks as one for each thing, at the first place that wants it, with how many want it. */
export function toldOnce(findings: readonly Finding[]): readonly Finding[] {
  const keyOf = ({ rule, what, mend }: Finding) => JSON.stringify([rule, what, mend]);
  const lacks = findings.filter(({ rule }) => LACKS.includes(rule)).map((one) => ({ one, key: keyOf(one) }));
  return findings.flatMap((one) => {
    if (!LACKS.includes(one.rule)) return [one];
    const [first, ...more] = lacks.filter(({ key }) => key === keyOf(one)).map((lack) => lack.one);
    return first === one ? [joined(first, more)] : [];
  });
}

function joined(first: Finding, more: readonly Finding[]): Finding {
  const places = more.length === 0 ? '' : ` (${more.length + 1} places)`;
  if (first.unit !== 'count') return { ...first, what: [...first.what, places].filter((said) => said !== '') };
  const wanted = [first, ...more].reduce((sum, { figure }) => sum + (figure ?? 0), 0);
  return {
    ...first,
    figure: wanted,
    what: [...first.what, `, and ${wanted} ${wanted === 1 ? 'is' : 'are'} wanted${places}`],
  };
}
