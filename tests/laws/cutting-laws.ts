import type { Area, Cut, CutAnswer, CutJob, CutPlace, CutSheet } from '../../src/core/cutting/job.ts';
import { replay } from '../../src/core/cutting/replay.ts';

/** A law names everything in an answer that breaks it. */
export type Law = (job: CutJob, answer: CutAnswer) => readonly string[];

const SAME = 1e-4;
const close = (a: number, b: number) => Math.abs(a - b) < SAME;

function each(answer: CutAnswer, check: (sheet: CutSheet) => readonly string[]): readonly string[] {
  return answer.sheets.flatMap((sheet, index) => check(sheet).map((what) => `sheet ${index + 1}: ${what}`));
}

function stockOf(job: CutJob, sheet: CutSheet) {
  return job.stock.find((stock) => stock.id === sheet.stock);
}

/** Every part lies on its sheet inside the trim and off the spots that can't be used. */
export const inside: Law = (job, answer) =>
  each(answer, (sheet) => {
    const stock = stockOf(job, sheet);
    const trim = stock?.offcut === true ? 0 : job.trim;
    return sheet.parts.flatMap((part) => {
      const [right, top] = [part.x + part.length, part.y + part.width];
      const out =
        part.x < trim - SAME ||
        part.y < trim - SAME ||
        right > sheet.length - trim + SAME ||
        top > sheet.width - trim + SAME;
      const spoilt = (stock?.noGo ?? []).some((spot) => overlap(part, spot) > SAME);
      return out || spoilt
        ? [`${part.part} at ${part.x}, ${part.y} ${out ? 'leaves the sheet' : 'lies on a bad spot'}`]
        : [];
    });
  });

/** How deep two rectangles stand in each other; minus the gap when they are apart. */
function overlap(a: Area, b: Area): number {
  const x = Math.min(a.x + a.length, b.x + b.length) - Math.max(a.x, b.x);
  const y = Math.min(a.y + a.width, b.y + b.width) - Math.max(a.y, b.y);
  return Math.min(x, y);
}

/** Between any two parts there is room for the cut. */
export const kerfBetween: Law = (job, answer) => {
  const kerf = job.style.kind === 'router' ? Math.max(job.kerf, job.style.bit) : job.kerf;
  return each(answer, (sheet) =>
    sheet.parts.flatMap((a, i) =>
      sheet.parts
        .slice(i + 1)
        .flatMap((b) => (overlap(a, b) > SAME - kerf ? [`${a.part} and ${b.part} are closer than the kerf`] : [])),
    ),
  );
};

/** Every part has its size, and its grain lies along the sheet's. */
export const grainKept: Law = (job, answer) =>
  each(answer, (sheet) => {
    const grain = stockOf(job, sheet)?.grain ?? 'any';
    return sheet.parts.flatMap((place) => {
      const part = job.parts.find((one) => one.id === place.part);
      if (part === undefined) return [`${place.part} was never asked for`];
      const [length, width] = place.turned ? [place.width, place.length] : [place.length, place.width];
      if (!close(length, part.length) || !close(width, part.width)) return [`${place.part} has another size`];
      const across = grain !== 'any' && part.grain !== 'any' && place.turned !== (grain !== part.grain);
      return across ? [`${place.part} lies across the grain`] : [];
    });
  });

/** As many pieces as asked, each placed once or told as not placed. */
export const allThere: Law = (job, answer) =>
  job.parts.flatMap((part) => {
    const placed = answer.sheets.flatMap((sheet) => sheet.parts).filter((place) => place.part === part.id).length;
    const left = answer.unplaced.filter((one) => one.part === part.id).reduce((sum, one) => sum + one.quantity, 0);
    return placed + left === part.quantity ? [] : [`${part.id}: ${placed} placed, ${left} not, ${part.quantity} asked`];
  });

/** The printed cuts, made one by one, give exactly the parts, the offcuts and the waste. */
export const cutsGiveParts: Law = (job, answer) =>
  job.style.kind === 'router'
    ? []
    : each(answer, (sheet) => {
        const { faults, left, parts } = replay(sheet);
        const rest = [...sheet.offcuts, ...sheet.waste];
        const missing = left.filter((area) => !rest.some((one) => same(one, area)));
        const told = rest.length === left.length && missing.length === 0 ? [] : ['what is left is not what is printed'];
        return [
          ...faults,
          ...told,
          ...(parts.length === sheet.parts.length ? [] : ['not every part came off the saw']),
        ];
      });

function same(a: Area, b: Area): boolean {
  return close(a.x, b.x) && close(a.y, b.y) && close(a.length, b.length) && close(a.width, b.width);
}

/** No piece is cut in more rounds than the style has; a round is a run of parallel cuts. The first round is rips. */
export const stagesKept: Law = (job, answer) => {
  const { style } = job;
  const most = style.kind === 'router' || style.stages === 'any' ? Number.POSITIVE_INFINITY : style.stages;
  return each(answer, (sheet) => {
    const rounds: { readonly area: Area; readonly round: number; readonly kind: Cut['kind'] }[] = [];
    return sheet.cuts.flatMap((cut) => {
      if (cut.stage === 0) return [];
      const before = rounds.find((one) => same(one.area, cut.from));
      const round =
        before === undefined ? (cut.kind === 'rip' ? 1 : 2) : before.round + (before.kind === cut.kind ? 0 : 1);
      for (const area of cut.yields) rounds.push({ area, round, kind: cut.kind });
      return round > most ? [`cut ${cut.number} is in round ${round}`] : [];
    });
  });
};

/** Parts, rest and kerfs together are the sheet. */
export const materialAddsUp: Law = (job, answer) =>
  job.style.kind === 'router'
    ? []
    : each(answer, (sheet) => {
        const size = (area: Area) => area.length * (sheet.width === 0 ? 1 : area.width);
        const sum = [...sheet.parts, ...sheet.offcuts, ...sheet.waste, ...sheet.cuts.map((cut) => cut.kerf)].reduce(
          (s, a) => s + size(a),
          0,
        );
        const whole = size({ x: 0, y: 0, length: sheet.length, width: sheet.width });
        return Math.abs(sum - whole) < 1e-6 * whole ? [] : [`${sum} of ${whole} accounted for`];
      });

/** No bound claims more sheets than were found to do, and offcuts are as large as asked. */
export const boundsHold: Law = (job, answer) => [
  ...answer.bounds
    .filter((b) => b.bound > b.found || b.proved !== (b.bound === b.found))
    .map((b) => `${b.stock}: bound ${b.bound}, found ${b.found}`),
  ...each(answer, (sheet) =>
    sheet.offcuts
      .filter((area) => Math.min(area.length, sheet.width === 0 ? area.length : area.width) < job.keep - SAME)
      .map((area) => `offcut ${area.length} x ${area.width} is too small to keep`),
  ),
];

/** No more sheets of a stock than are in hand. */
export const stockKept: Law = (job, answer) =>
  job.stock.flatMap((stock) => {
    const used = answer.sheets.filter((sheet) => sheet.stock === stock.id).length;
    const most = stock.count ?? (stock.offcut ? 1 : Number.POSITIVE_INFINITY);
    return used > most ? [`${stock.id}: ${used} used of ${most}`] : [];
  });

/** A piece under 300 mm along the fence, or wider than that, is never led there by hand; common practice, no source. */
export const shortOnSled: Law = (_, answer) =>
  each(answer, (sheet) =>
    sheet.cuts.flatMap(({ kind, from, cautions, number }) => {
      const short = sheet.width > 0 && kind === 'rip' && (from.length < 300 || from.length < from.width);
      const told = cautions.includes('short-rip') && !cautions.includes('narrow-rip');
      return short && !told ? [`cut ${number} rips ${from.length} x ${from.width} at the fence`] : [];
    }),
  );

/** Every number in an answer is a number. */
export const numbers: Law = (_, answer) => {
  const bad: string[] = [];
  const visit = (value: unknown, path: string): void => {
    if (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0))) bad.push(`${path} is ${value}`);
    if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value)) visit(inner, `${path}.${key}`);
  };
  visit(answer, 'answer');
  return bad;
};

export const LAWS = {
  inside,
  kerfBetween,
  grainKept,
  allThere,
  cutsGiveParts,
  stagesKept,
  materialAddsUp,
  boundsHold,
  stockKept,
  shortOnSled,
  numbers,
};

/** Moves the first part of the first sheet; a fault to plant. */
export function withPart(answer: CutAnswer, change: (part: CutPlace) => CutPlace): CutAnswer {
  return {
    ...answer,
    sheets: answer.sheets.map((sheet, i) =>
      i > 0 ? sheet : { ...sheet, parts: sheet.parts.map((part, j) => (j > 0 ? part : change(part))) },
    ),
  };
}

/** Changes one cut of the first sheet; a fault to plant. */
export function withCut(answer: CutAnswer, change: (cut: Cut) => Cut): CutAnswer {
  return {
    ...answer,
    sheets: answer.sheets.map((sheet, i) =>
      i > 0 ? sheet : { ...sheet, cuts: sheet.cuts.map((cut, j) => (j === sheet.cuts.length - 1 ? change(cut) : cut)) },
    ),
  };
}
