import { type Metal, metalOf, turnoutMetal } from '../../../src/core/wiring/metal.ts';
import { graphOf, type LaidRail, type RailGraph } from '../../../src/core/wiring/rail-graph.ts';

/** A layout's rails with the number of reversing sections it is known to need. */
export type KnownGraph = {
  readonly name: string;
  readonly sections: number;
  readonly graph: RailGraph;
  readonly own: boolean;
};

const joint = (id: string): Metal => ({ id, inlets: [`${id}.in`], outlets: [`${id}.out`] });
const crossing = metalOf('X', [
  { from: 'a', to: 'b' },
  { from: 'c', to: 'd' },
]);

/** `A.straight > B.points 900` lays 900 mm of rail. */
function laid(...rails: readonly string[]): readonly LaidRail[] {
  return rails.map((rail) => {
    const [from = '', , to = '', length = '1000'] = rail.split(' ');
    return { id: `${from}-${to}`, from, to, length: Number(length) };
  });
}

const turnouts = (...ids: readonly string[]) => ids.map((id) => turnoutMetal(id));

/** Facts of the trade: common practice, no source. The last three are the project's own, counted by hand. */
export const knownGraphs: readonly KnownGraph[] = [
  { name: 'an oval', sections: 0, own: false, graph: graphOf([joint('J')], laid('J.out > J.in')) },
  {
    name: 'two ovals with two crossovers',
    sections: 0,
    own: false,
    graph: graphOf(
      turnouts('O1', 'O2', 'I1', 'I2'),
      laid(
        'O1.straight > O2.straight',
        'O2.points > O1.points',
        'I1.points > I2.points',
        'I2.straight > I1.straight',
        'O1.branch > I1.branch',
        'I2.branch > O2.branch',
      ),
    ),
  },
  {
    name: 'a figure of eight with a crossing',
    sections: 0,
    own: false,
    graph: graphOf(crossing, laid('X.b > X.c', 'X.d > X.a')),
  },
  {
    name: 'a dogbone of double track, an oval folded together',
    sections: 0,
    own: false,
    graph: graphOf([joint('A'), joint('B')], laid('A.out > B.in', 'B.out > A.in')),
  },
  {
    name: 'a balloon loop',
    sections: 1,
    own: false,
    graph: graphOf([...turnouts('T'), joint('end')], laid('end.out > T.points', 'T.straight > T.branch')),
  },
  {
    name: 'an oval with a reversing diagonal',
    sections: 1,
    own: false,
    graph: graphOf(
      turnouts('T1', 'T2'),
      laid('T1.straight > T2.points', 'T2.straight > T1.points', 'T1.branch > T2.branch'),
    ),
  },
  {
    name: 'a wye',
    sections: 1,
    own: false,
    graph: graphOf(
      [...turnouts('T1', 'T2', 'T3'), joint('a'), joint('b'), joint('c')],
      laid(
        'T1.straight > T2.branch',
        'T2.straight > T3.branch',
        'T3.straight > T1.branch',
        'T1.points > a.in',
        'T2.points > b.in',
        'T3.points > c.in',
      ),
    ),
  },
  {
    name: 'a turntable turned by half a turn',
    sections: 1,
    own: false,
    graph: graphOf([joint('pit'), joint('yard')], laid('yard.out > pit.in', 'pit.out > pit.out')),
  },
  {
    name: 'a dogbone of single track',
    sections: 2,
    own: false,
    graph: graphOf(turnouts('L', 'R'), laid('L.points > R.points', 'L.straight > L.branch', 'R.straight > R.branch')),
  },
  {
    name: 'a wye with a balloon loop at each tail',
    sections: 4,
    own: true,
    graph: graphOf(
      turnouts('T1', 'T2', 'T3', 'A', 'B', 'C'),
      laid(
        ...['T1.straight > T2.branch', 'T2.straight > T3.branch', 'T3.straight > T1.branch'],
        ...['T1.points > A.points', 'T2.points > B.points', 'T3.points > C.points'],
        ...['A.straight > A.branch', 'B.straight > B.branch', 'C.straight > C.branch'],
      ),
    ),
  },
  {
    name: 'an oval with two diagonals that cross',
    sections: 2,
    own: true,
    graph: graphOf(
      turnouts('T1', 'T2', 'T3', 'T4'),
      laid(
        ...['T1.straight > T2.points', 'T2.straight > T3.points', 'T3.straight > T4.points', 'T4.straight > T1.points'],
        ...['T1.branch > T3.branch', 'T2.branch > T4.branch'],
      ),
    ),
  },
  {
    name: 'two ovals joined once, head on',
    sections: 0,
    own: true,
    graph: graphOf(turnouts('O', 'I'), laid('O.straight > O.points', 'I.straight > I.points', 'O.branch > I.branch')),
  },
];
