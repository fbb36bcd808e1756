import type { Finding } from '../finding.ts';
import type { Head } from '../head.schema.ts';
import type { PieceInHand } from '../stock/in-hand.ts';
import type { Saw } from '../stock/saw.ts';
import { length, type Said, say } from '../units/say.ts';
import { countIn, type HeadReading, sizeIn } from './reading.ts';

/** An offcut whose shorter side is less is swept up, mm; a setting, common practice, no source. */
const KEEP = 100;

type Cutting = NonNullable<Head['cutting']>;
const ROUNDS = { two: 2, three: 3, any: 'any' } as const;

/** The saw's settings beside its kerf; what nobody wrote is assumed and said so. mm. */
export function cuttingValues(
  cutting: Cutting | undefined,
  reading: HeadReading,
): { readonly saw: Omit<Saw, 'kerf' | 'rip'>; readonly findings: readonly Finding[] } {
  const { trim, keep, rounds, car } = cutting ?? {};
  const bit = cutting?.['routed-with'];
  const saw = {
    trim: trim === undefined ? 0 : sizeIn(trim, reading, 'none'),
    keep: keep === undefined ? KEEP : sizeIn(keep, reading, 'some'),
    rounds: rounds === undefined ? 3 : ROUNDS[rounds],
    nest: bit === undefined ? null : sizeIn(bit, reading, 'some'),
    car: car === undefined ? null : carIn(car, reading),
  };
  const assumed: readonly (readonly Said[])[] = [
    ...(trim === undefined ? [say`factory edges are kept (trim 0)`] : []),
    ...(keep === undefined ? [say`an offcut is kept from ${length(KEEP)} up`] : []),
    ...(rounds === undefined && bit === undefined ? [say`sheets are cut in three rounds, rips first`] : []),
  ];
  return { saw, findings: assumed.length === 0 ? [] : [cuttingAssumed(assumed)] };
}

function carIn(car: NonNullable<Cutting['car']>, reading: HeadReading) {
  return {
    length: sizeIn(car.length, reading, 'some'),
    width: sizeIn(car.width, reading, 'some'),
    within: sizeIn(car.within, reading, 'none'),
  };
}

function cuttingAssumed(assumed: readonly (readonly Said[])[]): Finding {
  const told = assumed.flatMap((said, i) => (i === 0 ? said : ['; ', ...said]));
  return {
    ...{ rule: 'cutting-assumed', level: 'note', where: 'cutting', chapter: 'benchwork' },
    what: ['not written, so assumed: ', ...told],
    ...{ figure: null, limit: null, unit: 'mm' },
    mend: say`write trim, keep and rounds under cutting in notebook.md`,
    ...{ source: 'common practice, no source', accepted: null },
  };
}

/** The sheets, boards and offcuts in hand, their length along the grain. mm. */
export function piecesInHand(written: NonNullable<Head['in-hand']>, reading: HeadReading): readonly PieceInHand[] {
  const twice = written.findIndex(({ id }, i) => written.findIndex((other) => other.id === id) < i);
  if (twice >= 0) {
    const what = `\`${written[twice]?.id}\` is written on another piece in hand already`;
    const at = `notebook.in-hand.${twice}.id`;
    reading.faults.push({ rule: 'duplicate-id', at, what, mend: 'give one of them another id, or write count: 2' });
  }
  return written.map((piece) => ({
    id: piece.id,
    stock: piece.stock,
    length: sizeIn(piece.length, reading, 'some'),
    width: sizeIn(piece.width, reading, 'some'),
    count: piece.count === undefined ? 1 : countIn(piece.count, reading),
    edges: piece.edges ?? 'sawn',
    thickness: piece.thickness === undefined ? null : sizeIn(piece.thickness, reading, 'some'),
    spoilt: (piece.spoilt ?? []).map(([x, y, along, across]) => ({
      x: sizeIn(x, reading, 'none'),
      y: sizeIn(y, reading, 'none'),
      length: sizeIn(along, reading, 'some'),
      width: sizeIn(across, reading, 'some'),
    })),
  }));
}
