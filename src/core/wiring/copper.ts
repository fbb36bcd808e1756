const INCH = 25.4;

/** Resistivity of annealed copper at 20 degrees Celsius, ohm mm2 per m: the International Annealed Copper Standard (IEC 60028). */
export const COPPER = 1.7241e-2;

/** Change of copper's resistance for each kelvin from 20 degrees Celsius: IEC 60028. */
export const COPPER_PER_KELVIN = 0.00393;

/** Diameter of an American gauge: 0.005 in times 92^((36 - n) / 39); n = 0 for 1/0, -1 for 2/0. mm; ASTM B258. */
export function gaugeDiameter(gauge: number): number {
  return 0.005 * 92 ** ((36 - gauge) / 39) * INCH;
}

/** Area of a round wire by its gauge, mm2. */
export function gaugeArea(gauge: number): number {
  return (Math.PI / 4) * gaugeDiameter(gauge) ** 2;
}

/** Resistance of a metre of wire of `area` mm2 at 20 degrees Celsius: rho / A; ohm. Copper unless another resistivity is given. */
export function ohmPerMetre(area: number, resistivity = COPPER): number {
  return resistivity / area;
}

/** A resistance known at 20 degrees Celsius at another temperature: R (1 + alpha (T - 20)); ohm. */
export function warmResistance(cold: number, celsius: number): number {
  return cold * (1 + COPPER_PER_KELVIN * (celsius - 20));
}

/** Two wires from the source to a load `oneWay` mm off. */
export type Run = { readonly oneWay: number; readonly ohmPerMetre: number; readonly amps: number };

/** Voltage lost in both wires of a run: 2 l r I; V. */
export function voltageDrop({ oneWay, ohmPerMetre: r, amps }: Run): number {
  return (2 * oneWay * r * amps) / 1000;
}

/** The longest run that loses no more than `drop` volts; one way, mm. Infinity when nothing flows or nothing resists. */
export function longestRun({ drop, ohmPerMetre: r, amps }: Omit<Run, 'oneWay'> & { readonly drop: number }): number {
  return (drop * 1000) / (2 * r * amps);
}
