import type { Sentence } from '../../units/say.ts';
import { type Draft, draft } from './draft.ts';

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

type Given = Pick<Draft, 'id' | 'title'> &
  Partial<Draft> & { readonly says: readonly Sentence[]; readonly makes?: readonly string[]; readonly noun?: string };

/** A step of the scenery with one piece of work in it. */
export function landDraft({ says, makes = [], noun, ...given }: Given): Draft {
  const work = [{ kind: 'machining' as const, noun: noun ?? given.id, makes, lines: says }];
  return draft({ ...given, chapter: 'scenery', work });
}
