import type { Sentence } from '../core/units/say.ts';
import type { DistrictFigures } from '../core/wiring/layout-circuit.ts';
import type { TestRow } from '../core/wiring/test-sheet.ts';
import type { Wire } from '../core/wiring/wire.ts';
import type { WiringModel } from '../core/wiring/wiring.ts';
import { type Json, millionth, plain, thousandth } from './rounded.ts';

type Say = (sentence: Sentence) => string;

function wireJson({ path, from, to, ...wire }: Wire, say: Say): Json {
  const { id, label, kind, stock, colour, district, net } = wire;
  return {
    ...{ id, label, kind, stock, colour, from: say(from), to: say(to), district, net },
    drawn: thousandth(wire.drawn),
    slack: thousandth(wire.slack),
    length: thousandth(wire.length),
    path: plain(path),
  };
}

function districtJson(district: DistrictFigures): Json {
  const { id, lines, loads, name, short, startUp, steady, trips, tripsAt, worst } = district;
  return {
    ...{ id, name, lines },
    tripsAt: thousandth(tripsAt),
    steady: thousandth(steady),
    startUp: thousandth(startUp),
    loads: plain(loads, ['load', 'kind', 'amps', 'volts']),
    worstVolts: worst === null ? null : thousandth(worst.volts),
    worstAt: worst === null ? null : { line: worst.line, at: thousandth(worst.at) },
    shortAmps: short === null ? null : thousandth(short.amps),
    shortOhms: short === null ? null : millionth(short.loop),
    shortAt: short === null ? null : { line: short.line, at: thousandth(short.at) },
    trips,
  };
}

/** The wiring as `export` writes it; null without the chapter. mm, V, A, ohm. */
export function wiringJson(wiring: WiringModel | null, say: Say): Json {
  if (wiring === null) return null;
  const testJson = ({ id, of, what, expect }: TestRow): Json => ({ id, of, what: say(what), expect: say(expect) });
  return {
    control: wiring.control,
    volts: thousandth(wiring.volts),
    bus: wiring.bus === null ? null : plain(wiring.bus, ['stock', 'found', 'proved', 'z', 'path', 'branches']),
    wires: wiring.wires.map((wire) => wireJson(wire, say)),
    holes: plain(wiring.holes, ['id', 'part', 'at', 'diameter', 'wires', 'access', 'off', 'wood']),
    feeders: plain(wiring.feeders, ['id', 'line', 'at', 'side', 'district', 'net', 'point', 'down']),
    gaps: plain(wiring.gaps, ['id', 'line', 'at', 'rails', 'why', 'of']),
    districts: wiring.districts.map(districtJson),
    reversing: plain(wiring.reversing, ['line', 'from', 'to', 'length']),
    units: plain(wiring.units, ['id', 'kind', 'of', 'line', 'district', 'from', 'place', 'clear']),
    leds: plain(wiring.leds, ['load', 'rows', 'inRow', 'resistor', 'rating', 'rectifier']),
    fuses: plain(wiring.fuses, ['load', 'amps', 'written', 'least', 'most', 'tripsAt']),
    smallParts: plain(wiring.smallParts, ['kind', 'name', 'quantity', 'of']),
    connectors: plain(wiring.connectors, ['id', 'between', 'at', 'pins']),
    voltage: plain(wiring.voltage, ['line', 'points']),
    tests: wiring.tests.map(testJson),
    places: plain(wiring.places, ['bay', 'bench', 'x', 'y', 'bus', 'busHeight']),
  };
}
