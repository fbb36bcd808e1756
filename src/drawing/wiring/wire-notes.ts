import { plugTag } from '../../core/wiring/bench-joints.ts';
import type { Gap } from '../../core/wiring/gap.ts';
import { holeOnPart } from '../../core/wiring/hole-on-part.ts';
import type { BusHole, DrillAccess } from '../../core/wiring/holes.ts';
import { listed } from '../../core/wiring/tell.ts';
import { UNIT_NAMES, unitTag } from '../../core/wiring/units.ts';
import type { Block } from '../block.ts';
import { saidLength } from '../figures.ts';
import { type Note, noteBlocks } from '../notes.ts';
import { tableBlocks } from '../table-block.ts';
import { pairNumber, pairsOf, saidWords, unbroken, type WiringAsk, wireSize } from './wiring-stage.ts';

const CUT_FOR: Readonly<Record<Gap['why'], string>> = {
  district: ', where districts meet',
  reversing: ', end of a section that reverses',
  bridge: ', end of the span that lifts',
  approach: ', dead approach',
  frog: '',
  written: '',
};

const DRILLED: Readonly<Record<DrillAccess, string>> = {
  'in place': 'before assembly or in place',
  'angle drill': 'before assembly, or with an angle drill',
  'before assembly': 'before assembly',
};

function note(letter: string, words: string): Note {
  return { letter, words, dimensions: [] };
}

/** Where the middle of every hole is on its board, as the board's own drawing shows it. */
export function holeTable(ask: WiringAsk): readonly Block[] {
  const { holes } = ask.wiring;
  if (holes.length === 0) return [];
  const said = (mm: number | undefined) => (mm === undefined ? '' : saidLength(mm, ask.options.unit));
  const placed = holes.map((hole) => ({ hole, on: holeOnPart(ask.book, hole) }));
  const ups = placed.map(({ on }) => `${said(on?.at?.[1])} from its ${on?.edge ?? ''}`);
  const alike = ups.every((up) => up === ups[0]);
  const rows = placed.map(({ hole, on }, i): readonly string[] => [
    ...[hole.id.replace('hole-', 'H'), on?.label ?? hole.part, `${said(on?.at?.[0])} from ${on?.end ?? 'left'}`],
    ...(alike ? [] : [ups[i] ?? '']),
    said(hole.diameter),
  ]);
  const columns = ['', 'board', 'middle from end', ...(alike ? [] : ['middle up']), 'across'];
  const foot = [...(alike ? [`All middles ${ups[0]}.`] : []), ...drillWords(holes)];
  return tableBlocks({ heading: 'Holes, as the boards’ drawings show them', columns, rows, foot });
}

function drillWords(holes: readonly BusHole[]): readonly string[] {
  const ways = [...new Set(holes.map(({ access }) => access))];
  return ways.map((access) => {
    const those = holes.filter((one) => one.access === access).map(({ id }) => id.replace('hole-', 'H'));
    return `Drill ${ways.length === 1 ? 'them' : listed(those)} ${DRILLED[access]}.`;
  });
}

/** A pair's two wires, or the one of a frog, as they are cut: `2 × 585 mm of 2.5 mm²`. */
export function cutWords(ask: WiringAsk, { label, length, stock }: WiringAsk['wiring']['wires'][number]): string {
  const count = label.endsWith('f') ? 1 : 2;
  return unbroken(`${count} × ${saidLength(length, ask.options.unit)} of ${wireSize(ask, stock)}`);
}

/** The wire list in pairs, the units, plugs and cuts, in words. */
export function wireNotes(ask: WiringAsk): readonly Block[] {
  const { wiring, options } = ask;
  const said = (mm: number) => unbroken(saidLength(mm, options.unit));
  const pairs = pairsOf(wiring).map((wire) =>
    note(pairNumber(wire), `${saidWords(ask, wire.from)} to ${saidWords(ask, wire.to)}: ${cutWords(ask, wire)}`),
  );
  const cuts = wiring.gaps.map(({ id, line, at, of, rails, why }) =>
    note(
      id.replace('gap-', 'G'),
      `${line} at ${said(at)}: ${rails === 'both' ? 'both rails' : `the rail from the frog of ${of}`}${CUT_FOR[why]}`,
    ),
  );
  const plugs = wiring.connectors.map(({ between, id, pins }) =>
    note(plugTag(id), `between ${between.join(' and ')}: plug and socket of ${pins.length} pins`),
  );
  const units = wiring.units.map(({ id, kind, of, line, from }) =>
    note(
      unitTag(wiring.units, id),
      `${UNIT_NAMES[kind]} for ${kind === 'bridge-switch' ? of : line}, fed from ${netName(ask, from)}`,
    ),
  );
  const lists = { Pairs: pairs, Units: units, Plugs: plugs, 'Cuts through the rails': cuts };
  return Object.entries(lists).flatMap(([heading, notes]) => (notes.length === 0 ? [] : noteBlocks(heading, notes)));
}

/** What a district or a unit is called on the drawings. */
export function netName({ wiring }: Pick<WiringAsk, 'wiring'>, net: string): string {
  return wiring.districts.find(({ id }) => id === net)?.name ?? unitTag(wiring.units, net);
}
