import { describe, expect, it } from 'vitest';
import { groupsOf } from '../../../src/core/assembly/group.ts';
import type { LegsInput } from '../../../src/core/benchwork/input.ts';
import { model } from '../benchwork/example.ts';
import { fittedTable, POSTS } from '../benchwork/fitted.ts';
import { proved } from './proved.ts';

const FORMS: Readonly<Record<string, LegsInput>> = {
  post: POSTS,
  angle: { ...POSTS, form: 'angle', layers: 1, width: 110 },
  trestle: { ...POSTS, form: 'trestle', layers: 1, width: 90 },
};

describe.each(Object.entries(FORMS))('%s legs', (_, legs) => {
  const input = fittedTable({ legs });
  const built = model(input);
  const groups = groupsOf(built.parts.flatMap(({ places }) => places.map(({ id }) => id)));
  const assembly = proved(input, built, { groups });
  const order = assembly.poses.find(({ pose }) => pose === assembly.chosen)?.order ?? [];
  const whole = order.filter(({ within, parts }) => within === null && parts.some((id) => id.startsWith('leg.')));

  it('come straight up into the finished frame, each as one', () => {
    expect(assembly.knots).toEqual([]);
    expect(whole).toHaveLength(groups.filter(({ id }) => id.startsWith('leg.')).length);
    for (const { direction, parts } of whole) {
      expect(direction).toEqual([0, 0, 1]);
      expect(parts.every((id) => id.startsWith('leg.'))).toBe(true);
    }
    const last = Math.max(
      ...order.flatMap(({ parts }, i) => (parts.some((id) => /^(?:side|end|strut)\./.test(id)) ? [i] : [])),
    );
    for (const move of whole) expect(order.indexOf(move)).toBeGreaterThan(last);
  });
});
