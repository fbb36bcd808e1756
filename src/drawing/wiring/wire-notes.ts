import type { Gap } from '../../core/wiring/gap.ts';
import { UNIT_NAMES } from '../../core/wiring/units.ts';
import type { Block } from '../block.ts';
import { saidLength } from '../figures.ts';
import { noteBlocks } from '../notes.ts';
import { pairNumber, pairsOf, saidWords, unitLetter, type WiringAsk } from './wiring-stage.ts';

const CUT_FOR: Readonly<Record<Gap['why'], string>> = {
  district: ', where districts meet',
  reversing: ', end of a section that reverses',
  bridge: ', end of the span that lifts',
  approach: ', dead approach',
  frog: '',
  written: '',
};

/** The wire list in pairs, the holes and the cuts, in words. */
export function wireNotes(ask: WiringAsk): readonly Block[] {
  const { wiring, options } = ask;
  const said = (mm: number) => saidLength(mm, options.unit);
  const pairs = pairsOf(wiring).map((wire) => ({
    letter: pairNumber(wire),
    words: `${saidWords(ask, wire.from)} to ${saidWords(ask, wire.to)}: ${wire.label.endsWith('f') ? '1' : '2'} x ${said(wire.length)} of ${wire.stock}`,
    dimensions: [],
  }));
  const holes = wiring.holes.map(({ id, part, diameter, wires, access }) => ({
    letter: id.replace('hole-', 'H'),
    words: `${part}, ${said(diameter)} across for ${wires} wires; drill ${access === 'in place' ? 'before assembly or in place' : access === 'angle drill' ? 'before assembly, or with an angle drill' : 'before assembly'}; round its edges or push in a grommet`,
    dimensions: [],
  }));
  const cuts = wiring.gaps.map(({ id, line, at, of, rails, why }) => ({
    letter: id.replace('gap-', 'G'),
    words: `${line} at ${said(at)}: ${rails === 'both' ? 'both rails' : `the rail from the frog of ${of}`}${CUT_FOR[why]}`,
    dimensions: [],
  }));
  const plugs = wiring.connectors.map(({ between, id, pins }) => ({
    letter: id.replace('plug-', 'P'),
    words: `between ${between.join(' and ')}: plug and socket of ${pins.length} pins`,
    dimensions: [],
  }));
  const units = wiring.units.map(({ id, kind, from }, i) => ({
    letter: unitLetter(i),
    words: `${id}: ${UNIT_NAMES[kind]}, fed from ${wiring.districts.find(({ id: own }) => own === from)?.name ?? from}`,
    dimensions: [],
  }));
  return [
    ...(pairs.length === 0 ? [] : noteBlocks('Pairs', pairs)),
    ...(units.length === 0 ? [] : noteBlocks('Units', units)),
    ...(plugs.length === 0 ? [] : noteBlocks('Plugs', plugs)),
    ...(holes.length === 0 ? [] : noteBlocks('Holes', holes)),
    ...(cuts.length === 0 ? [] : noteBlocks('Cuts through the rails', cuts)),
  ];
}
