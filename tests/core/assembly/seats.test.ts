import { describe, expect, it } from 'vitest';
import { inset, type Seat, standsOf } from '../../../src/core/assembly/seats.ts';
import { model } from '../benchwork/example.ts';
import { DRAWERS, fittedTable, POSTS, SHELVES } from '../benchwork/fitted.ts';

const built = model(fittedTable({ drawers: [DRAWERS], legs: POSTS, shelves: [SHELVES] }));
const stands = standsOf(built.parts, built.joints);
const seats = (id: string) => stands.of.get(id)?.seats ?? [];
const seat = (id: string, mate: string) => seats(id).find((one) => one.mate === mate);

/** The other way round: what one piece says of another, the other says of it. */
function mirrored({ how, held, cut, away }: Seat): Omit<Seat, 'mate'> {
  const other = cut === 'this' ? 'mate' : cut === 'mate' ? 'this' : cut;
  return { how, held, cut: other, away: away === null ? null : [0 - away[0], 0 - away[1], 0 - away[2]] };
}

function unanswered(all: ReadonlyMap<string, { readonly seats: readonly Seat[] }>): readonly string[] {
  return [...all].flatMap(([id, one]) =>
    one.seats.flatMap(({ mate, ...said }) => {
      const back = all.get(mate)?.seats.find((other) => other.mate === id);
      const answer = back === undefined ? null : JSON.stringify({ ...mirrored(back) });
      return answer === JSON.stringify(said) ? [] : [`${id} and ${mate}`];
    }),
  );
}

describe('where a piece stands', () => {
  it('is told by both of two pieces alike', () => {
    expect(stands.of.size).toBeGreaterThan(40);
    expect(unanswered(stands.of)).toEqual([]);
  });

  it('would be found out if one of them forgot the other: the fault that shows this can fail', () => {
    const of = new Map(stands.of);
    of.set('end.left', { box: { min: [0, 0, 0], max: [1, 1, 1] }, seats: [] });
    expect(unanswered(of)).toContain('side.front and end.left');
  });

  it('names both boards of the corner a leg is bolted in, one bolted and one only touched', () => {
    expect(seat('leg.front-left.layer-1', 'side.front')).toMatchObject({
      how: 'bolted',
      held: 'bolts',
      away: [0, 1, 0],
    });
    expect(seat('leg.front-left.layer-1', 'end.left')).toMatchObject({ how: 'touch', held: null, away: [1, 0, 0] });
    expect(seat('leg.front-left.layer-1', 'end.right')).toBeUndefined();
  });

  it('says whose wood is cut: the side for a strut, a strut for neither spacer nor cleat, both for a lap', () => {
    expect(seat('strut.across-1', 'side.front')).toMatchObject({ how: 'dado', cut: 'mate', away: null });
    expect(seat('side.front', 'strut.across-1')).toMatchObject({ how: 'dado', cut: 'this', away: null });
    expect(seat('strut.across-1', 'strut.along-1')).toMatchObject({ how: 'lap', cut: 'both' });
    expect(seat('spacer.front-2-left', 'strut.across-1')).toMatchObject({
      how: 'butt',
      held: 'screws',
      away: [1, 0, 0],
    });
  });

  it('lets a drawer’s box through the opening of the side: no wood is touched there', () => {
    expect(seats('drawer.front-2.side-left').map(({ mate }) => mate)).not.toContain('side.front');
    expect(seats('spacer.front-2-left').map(({ mate }) => mate)).toContain('side.front');
  });

  it('is measured from the ends of what bears it', () => {
    const box = { min: [100, 0, 0], max: [118, 50, 50] } as const;
    const other = { min: [10, 0, 0], max: [200, 50, 50] } as const;
    expect(inset(box, other, 0)).toEqual({ axis: 0, low: 90, high: 82 });
  });
});
