import type { Finding } from '../finding.ts';
import { say } from '../units/say.ts';
import type { LandWork } from './generated/land.ts';
import type { Step } from './step.ts';

/** Written steps that close a hidden space and name no piece, where every profile board is glued: then nothing comes off. */
export function wayInFindings(steps: readonly Step[], { boards, tunnels }: LandWork): Finding[] {
  const [first] = boards;
  if (first === undefined || tunnels.length === 0 || boards.some(({ lifts }) => lifts)) return [];
  return steps
    .filter(({ chapter, closes, fits = [] }) => chapter === 'scenery' && closes !== null && fits.length === 0)
    .map(({ id, title, closes }) => ({
      ...{ rule: 'way-in-glued', level: 'note', where: id, chapter: 'scenery' },
      what: say`'${title}' closes ${closes ?? ''} and names no piece; ${boards.map(({ label }) => label).join(', ')} would be glued and screwed.`,
      ...{ figure: null, limit: null, unit: 'count' },
      mend: say`If one of them is to lift off, write it in this step: 'fits: [${first.id}]'. It then stands on dowels.`,
      ...{ source: 'common practice, no source', accepted: null },
    }));
}
