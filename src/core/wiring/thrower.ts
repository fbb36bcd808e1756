import type { LoadInput, WiringInput } from './input.ts';
import type { SmallPart } from './small-part.ts';

/** What throws a motor that is written as a pulse, bought; the chapter names none, so one for each is assumed. */
export const THROWERS: Readonly<Record<WiringInput['supply']['control'], string>> = {
  digital: 'accessory decoder',
  dc: 'push button with a capacitor discharge unit',
};

/** Words after a load's name for what stands between it and the bus; empty for a steady one. */
export function throwerBefore({ loads, supply }: Pick<WiringInput, 'loads' | 'supply'>, id: string): string {
  const pulse = loads.some((load) => load.id === id && load.kind === 'pulse');
  return pulse ? `, through its ${THROWERS[supply.control]}` : '';
}

/** The same as it is bought; nothing for a steady load. */
export function throwerParts(supply: WiringInput['supply'], { amps, id, kind }: LoadInput): readonly SmallPart[] {
  if (kind !== 'pulse') return [];
  const [first = '', ...rest] = THROWERS[supply.control];
  const name = `${first.toUpperCase()}${rest.join('')}, listed for ${supply.volts} V and a motor of ${amps} A`;
  return [{ kind: 'thrower', name, quantity: 1, of: [id] }];
}
