import type { Finding } from '../finding.ts';
import type { Request } from '../stock/part.ts';
import { bundleDiameter, holeFor } from './bundle.ts';
import type { ComesDown } from './clear-way.ts';
import { comesDown } from './comes-down.ts';
import type { Computed, Served, Wires } from './computed.ts';
import { type Connector, connectors } from './connectors.ts';
import { deckBoards, takesHole } from './deck-board.ts';
import { type DeckHole, deckHoles, thinHole } from './deck-holes.ts';
import { districtsOf } from './districts.ts';
import { type Feeder, feedersOf } from './feeders.ts';
import { circuitFindings } from './findings/circuit.ts';
import { frogFindings } from './findings/frogs.ts';
import { gapFindings } from './findings/gaps.ts';
import { liftFindings } from './findings/lifts.ts';
import { loadFindings } from './findings/loads.ts';
import { routeFindings } from './findings/route.ts';
import { gives, supplyFindings } from './findings/supply.ts';
import { unitFindings } from './findings/units.ts';
import { type LoadFuse, loadFuses } from './fuses.ts';
import type { Gap } from './gap.ts';
import { type Gaps, gapsOf, type ReversingSection } from './gaps.ts';
import { type BusHole, holeRequests } from './holes.ts';
import type { WiringInput } from './input.ts';
import { type BusRun, type LaidBus, layBus } from './laid-bus.ts';
import type { LaidUnit } from './laid-unit.ts';
import {
  type DistrictFigures,
  districtFigures,
  type LineVoltage,
  layoutCircuit,
  lineVoltages,
  unfedRails,
} from './layout-circuit.ts';
import { type LedLoad, ledLoads } from './led-load.ts';
import { type PlaceBelow, placesBelow } from './places.ts';
import { railSides } from './rail-sides.ts';
import type { SmallPart } from './small-part.ts';
import { smallParts } from './small-parts.ts';
import { type TestRow, testSheet } from './test-sheet.ts';
import { type Bundle, underDeck } from './under.ts';
import { unitsFor } from './units.ts';
import type { Wire } from './wire.ts';
import { wireList } from './wire-list.ts';
import { sizedOnce } from './wire-size.ts';

/** The wiring as computed; notebook coordinates, mm, V, A, ohm. */
export type WiringModel = {
  readonly control: 'digital' | 'dc';
  readonly volts: number;
  /** current at which the supply switches off */
  readonly tripsAt: number;
  /** share of the voltage that may be lost */
  readonly mayLose: number;
  /** of the copper at work, degrees Celsius */
  readonly warm: number;
  readonly bus: BusRun | null;
  readonly wires: readonly Wire[];
  readonly holes: readonly BusHole[];
  /** holes down through the deck */
  readonly deckHoles: readonly DeckHole[];
  readonly feeders: readonly Feeder[];
  readonly gaps: readonly Gap[];
  readonly reversing: readonly ReversingSection[];
  /** reversers and switches between the bus and rails that cannot hang on it */
  readonly units: readonly LaidUnit[];
  readonly districts: readonly DistrictFigures[];
  readonly connectors: readonly Connector[];
  readonly voltage: readonly LineVoltage[];
  readonly tests: readonly TestRow[];
  readonly places: readonly PlaceBelow[];
  readonly leds: readonly LedLoad[];
  readonly fuses: readonly LoadFuse[];
  readonly smallParts: readonly SmallPart[];
  readonly requests: readonly Request[];
  readonly findings: readonly Finding[];
};

/** Everything laid and joined, before it is listed. */
function laidOut(input: WiringInput) {
  const cut = gapsOf(input);
  const under = underDeck(input, bundleOf(input, cut.sections.length));
  const wood = takesHole(deckBoards(input.ground), thinHole(input));
  const clear = under === null ? () => true : comesDown(under);
  const down: ComesDown = (point) => clear(point) && wood(point);
  const sides = railSides(input.rails, new Set(cut.sections.map(({ segment }) => segment)));
  const placed = feedersOf(input, cut.gaps, down).map((one) => ({ ...one, side: sides.get(one.segment) ?? one.side }));
  const asked = unitsFor(input, cut.sections, placed);
  const { feeders } = asked;
  const laid = under === null || input.bus === null ? null : layBus(input, under, { ...asked, comesDown: down });
  const hung = laid === null ? null : { ...laid.wired, tails: laid.tails };
  const circuit = layoutCircuit({ input, gaps: cut.gaps, feeders, laid: hung, ...resistances(input) });
  return { cut, feeders, laid, circuit, tails: laid?.tails ?? [], districts: districtFigures(input, circuit) };
}

/** The layout with other wires. */
function withWires(input: WiringInput, { bus, thin }: Wires): Served {
  const { feeders } = input;
  return laidOut({
    ...input,
    bus: input.bus === null ? null : { ...input.bus, stock: bus },
    feeders: feeders === null ? null : { ...feeders, stock: thin },
  });
}

/** Routes, lists, computes and checks the wiring of a layout. */
export function wiringModel(input: WiringInput): WiringModel {
  const { control, tripsAt, volts } = input.supply;
  const { circuit, cut, districts, feeders, laid, tails } = laidOut(input);
  const wires = laid === null ? [] : wireList(laid.wired);
  const holes = laid?.holes ?? [];
  const leds = ledLoads(input);
  const fuses = laid === null ? [] : loadFuses(input, tails);
  const served = {
    ...{ districts, feeders, tails, gaps: cut.gaps, unfed: unfedRails(circuit) },
    served: (other: Wires) => withWires(input, other),
  };
  const computed: Computed = { ...served, sized: sizedOnce(input, served) };
  const joined = laid === null ? [] : connectors(laid.wired.joints, wires, laid.wired.nets);
  return {
    ...{ control, volts, tripsAt },
    mayLose: input.mayLose,
    warm: input.warm,
    bus: laid?.run ?? null,
    ...{ wires, holes, feeders, districts },
    deckHoles: laid === null ? [] : deckHoles(laid.wired, wires),
    gaps: cut.gaps,
    reversing: cut.sections,
    units: laid?.wired.units ?? [],
    connectors: joined,
    voltage: lineVoltages(input, circuit),
    tests: testSheet(input, { feeders, districts, gaps: cut.gaps, units: laid?.wired.units ?? [], wires }),
    places: laid === null ? [] : placesBelow(input, laid.wired, { holes, wires }),
    ...{ leds, fuses },
    smallParts: laid === null ? [] : smallParts({ input, laid, leds, fuses }),
    requests: holeRequests(holes),
    findings: findingsOf(input, { cut, laid, computed, fuses, wires }),
  };
}

type Found = {
  readonly cut: Gaps;
  readonly laid: LaidBus | null;
  readonly computed: Computed;
  readonly fuses: readonly LoadFuse[];
  readonly wires: readonly Wire[];
};

function findingsOf(input: WiringInput, { cut, laid, computed, fuses, wires }: Found): readonly Finding[] {
  return [
    ...supplyFindings(input),
    ...gapFindings(input, cut),
    ...liftFindings(input),
    ...frogFindings(input, computed),
    ...(laid === null ? [] : routeFindings(input, laid)),
    ...(laid === null
      ? []
      : unitFindings({ units: laid.wired.units, sections: cut.sections, feeders: computed.feeders, wires })),
    // without a supply every voltage is wrong for the same reason
    ...(laid === null || !gives(input)
      ? []
      : [...circuitFindings(input, computed), ...loadFindings(input, computed, fuses)]),
  ];
}

function resistances({ bus, feeders }: WiringInput): { readonly bus: number; readonly tail: number } {
  const own = bus?.stock.ohmPerMetre ?? 0;
  return { bus: own, tail: feeders?.stock.ohmPerMetre ?? own };
}

/** All pairs of heavy wires side by side: one for each district, and one for each unit that may be needed. */
function bundleOf(input: WiringInput, reversing: number): Bundle {
  const wires = 2 * (districtsOf(input).length + reversing + input.lifts.length);
  const outside = input.bus?.stock.outside ?? 0;
  return { radius: bundleDiameter(wires, outside) / 2, hole: holeFor(wires, outside, input.show) / 2 };
}
