import { capital } from '../units/say.ts';
import type { LoadInput, WiringInput } from './input.ts';
import type { SmallPart } from './small-part.ts';
import { UNIT_NAMES, type UnitWanted } from './units.ts';

/** What gives, parts and turns the current: the supply, a breaker for each district, reversers and switches. */
export function boughtGear(
  { districts, rails, supply }: WiringInput,
  units: readonly UnitWanted[],
): readonly SmallPart[] {
  const { control, tripsAt, volts } = supply;
  const gives = control === 'digital' ? 'Command station with booster' : 'Throttle';
  const all = `${gives} and its listed supply, ${figure(volts)} V, switching off at ${figure(tripsAt)} A`;
  return [
    { kind: 'supply', name: all, quantity: 1, of: [] },
    ...districts.map(
      ({ id, tripsAt: own }): SmallPart => ({
        kind: 'breaker',
        name: `Circuit breaker, ${figure(own)} A`,
        quantity: 1,
        of: [id],
      }),
    ),
    ...units.map(({ district, id, kind }): SmallPart => {
      const through = districts.find((one) => one.id === district)?.tripsAt ?? tripsAt;
      return { kind: 'unit', name: `${capital(UNIT_NAMES[kind])}, ${figure(through)} A`, quantity: 1, of: [id] };
    }),
    ...rails.turnouts
      .filter(({ frog }) => frog === 'live')
      .map(
        ({ id }): SmallPart => ({
          kind: 'unit',
          name: 'Changeover switch for a live frog, one pole',
          quantity: 1,
          of: [id],
        }),
      ),
  ];
}

/** What a load is: diodes by their count, a turnout's motor, or a thing of its own. */
export function loadPart({ supply }: Pick<WiringInput, 'supply'>, { amps, id, leds, place }: LoadInput): SmallPart {
  if (leds !== undefined && leds !== null) {
    const name = `Light-emitting diode, ${figure(leds.forward)} V, ${figure(leds.amps * 1000)} mA`;
    return { kind: 'diode', name, quantity: leds.rows * leds.inRow, of: [id] };
  }
  if (place.kind === 'turnout')
    return { kind: 'motor', name: `Turnout motor, at most ${figure(amps)} A`, quantity: 1, of: [id] };
  const name = `${capital(id.replaceAll('-', ' '))} for ${figure(supply.volts)} V, at most ${figure(amps)} A in all`;
  return { kind: 'load', name, quantity: 1, of: [id] };
}

function figure(value: number): string {
  return String(Number(value.toPrecision(4)));
}
