import { length, say } from '../../units/say.ts';
import { type Draft, singleDraft } from './draft.ts';

/** A water as the steps need it; mm, minutes and litres. */
export type WaterWork = {
  readonly id: string;
  readonly cuts: readonly string[];
  /** parts its tray is made of */
  readonly tray: readonly string[];
  /** water and floor, kg */
  readonly mass: number;
  readonly pours: number;
  readonly each: number;
  readonly wait: number;
  readonly litres: number;
  readonly dam: number;
  readonly deeper: number;
  readonly length: number;
};

/** A tray's glue and seal are left a day; common practice, no source. Minutes. */
const DAY = 24 * 60;

/** The tray of a water and its pours: sealed, levelled, then thin pours with a cure after each. */
export function landWater(water: WaterWork): Draft[] {
  const { id, cuts, tray: pieces, mass, dam, deeper, length: long } = water;
  const [tray, pour] = [`${id}-tray`, `${id}-pour`];
  return [
    singleDraft({
      chapter: 'scenery',
      id: tray,
      title: `Build and seal the tray of ${id}`,
      says: [
        ...(cuts.length === 0
          ? []
          : [say`Cut for it in ${cuts.join(', ')}, as their drawings show, before the frame is glued where you can.`]),
        say`Glue the walls under the deck and the floor under the walls. It will carry ${kilograms(mass)}: glue and screw a strip of wood to the deck's underside outside each wall, and let the strips hold the floor, not the glue alone.`,
        say`Run a bead of sealant round every joint, screw hole and post. Once it has cured, the supply unplugged and a bowl below, fill it with water overnight: what drips now is cheap.`,
        say`Lay a level both ways: a lean of 1:96 makes the low end ${length(deeper)} deeper over ${length(long)}, so the banks want ${length(dam)} over the floor.`,
      ],
      makes: pieces,
      noun: 'tray',
      tools: pieces.length === 0 ? [] : ['jigsaw', 'sandpaper'],
      deeds: ['glue', 'water'],
      child: pieces.length === 0 ? 'does with an adult' : 'away',
      wait: DAY,
      after: ['plaster', 'cover-ground'],
    }),
    singleDraft({
      ...poured(water),
      chapter: 'scenery',
      id: pour,
      title: `Pour ${id}`,
      after: [tray, 'cover-ground', 'ballast'],
    }),
  ];
}

function kilograms(mass: number): string {
  return `${(Math.round(mass * 10) / 10).toString()} kg`;
}

function poured({ pours, each, litres, wait }: WaterWork) {
  return {
    says: [
      say`${String(pours)} pours of ${length(each)}, ${(Math.round(litres * 100) / 100).toString()} litres in all with what stays in the cups; wait for each to set before the next.`,
      say`The label's limit for one pour comes first: a thicker one gets hot. Keep the room warm and dustless until the last has cured, and do not stand the table on its edge before.`,
    ],
    tools: ['resin'],
    child: 'away' as const,
    wait,
  };
}
