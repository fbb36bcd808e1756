import type { Fitting, Site } from '../fitting.ts';
import { fetched } from '../hardware/count.ts';
import { metalScrews } from '../hardware/driven.ts';

/** Brackets in the corner of foot and pad, with screws into face grain only, since screws in end grain don't count. */
const BRACKETS = 2;
const SCREWS = 4;
const METAL = 1.5;

/** Brackets and their screws for one foot, mm of wood behind each screw. */
export function bracketed(site: Site, where: string, wood: number): Pick<Fitting, 'hardware' | 'findings'> {
  const bracket = fetched(site.goods, { form: 'bracket', where }, BRACKETS);
  const screws = metalScrews(site.goods, { through: METAL, into: wood }, { where, quantity: BRACKETS * SCREWS });
  return {
    hardware: [...bracket.hardware, ...screws.hardware],
    findings: [...bracket.findings, ...screws.findings],
  };
}
