import type { HardwareUse } from '../../stock/fastener.ts';
import type { Fitting, Site } from '../fitting.ts';
import { fetched } from '../hardware/count.ts';
import { screwFor } from '../hardware/screws.ts';

/** Brackets in the corner of foot and pad, with screws into face grain only, since screws in end grain don't count. */
const BRACKETS = 2;
const SCREWS = 4;
const METAL = 1.5;

/** Brackets and their screws for one foot, mm of wood behind each screw. */
export function bracketed(site: Site, where: string, wood: number): Pick<Fitting, 'hardware' | 'findings'> {
  const bracket = fetched(site.goods, { form: 'bracket', where }, BRACKETS);
  const screw = site.goods === null ? null : screwFor(site.goods, { through: METAL, into: wood });
  const screws: readonly HardwareUse[] =
    screw === null ? [] : [{ item: screw.id, quantity: BRACKETS * SCREWS, length: screw.length, where }];
  return { hardware: [...bracket.hardware, ...screws], findings: bracket.findings };
}
