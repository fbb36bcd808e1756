import { z } from 'zod';
import { calendarDate } from '../units/date.schema.ts';
import type { QuantityKit } from '../units/schema.ts';
import { chapterName, dottedName, identifier, renamed, words, yesNo } from '../units/words.schema.ts';
import { written } from '../units/written.schema.ts';

const because = words.optional().describe('The reason');

/** Readings of one thing on one day. Inputs (stock, room) enter the model, results are compared. */
function measuredSchema(kit: QuantityKit) {
  return z.strictObject({
    /** `frame.thickness`, a part, a place of the room */
    what: dottedName,
    readings: z.array(kit.length).min(1, 'at least one reading'),
    /** the instrument */
    with: words.optional(),
    /** its accuracy, plus or minus */
    within: kit.length.optional(),
  });
}

/** A value set anew, or a block of the chapter added or taken away. Paths are the chapter's own. */
function changeSchema() {
  return z.union([
    z.strictObject({ set: dottedName, was: written, to: written, because }),
    z.strictObject({ add: dottedName, block: written, because }),
    z.strictObject({ remove: dottedName, block: written, because }),
  ]);
}

/** Something mended, and how much of the part it leaves. */
function fixSchema(kit: QuantityKit) {
  return z.strictObject({
    part: dottedName,
    at: kit.length,
    /** the end `at` is measured from */
    from: words.optional(),
    what: words,
    cause: words.optional(),
    mend: words,
    leaves: z.enum(['full', 'half', 'hinge', 'nothing']),
  });
}

/** Where something was seen along a line, with what was seen there. */
function alongLineWith<S extends z.ZodRawShape>(kit: QuantityKit, seen: S) {
  return z.union([
    z.strictObject({ line: identifier, past: identifier, by: kit.length, ...seen }),
    z.strictObject({ line: identifier, at: kit.length, ...seen }),
  ]);
}

/** Track as it lies, measured. */
function laidSchema(kit: QuantityKit) {
  return alongLineWith(kit, {
    'height-step': kit.length.optional(),
    'side-step': kit.length.optional(),
    gap: kit.length.optional(),
    gauge: kit.length.optional(),
    kink: kit.angle.optional(),
    twist: kit.length.optional(),
  });
}

/** A trial run: how often it came off there. */
function trialSchema(kit: QuantityKit) {
  return alongLineWith(kit, {
    off: kit.number,
    of: kit.number,
    vehicle: identifier.optional(),
    direction: z.enum(['forward', 'backward']).optional(),
  });
}

/** A space that a cover hides, and how to get at it again. */
const hiddenSchema = z.strictObject({
  id: identifier,
  access: words,
  photo: words.optional(),
  test: words.optional(),
});

const photoSchema = z.strictObject({
  /** file name in the notebook's photos folder */
  file: words,
  /** what is to be seen, for who cannot see it */
  alt: words,
  /** never published */
  private: yesNo.default(false),
});

/** A finding lived with: a worse figure opens it again. */
function acceptSchema(kit: QuantityKit) {
  const figure = z.union([
    kit.length,
    kit.angle,
    kit.grade,
    kit.current,
    kit.voltage,
    kit.mass,
    kit.duration,
    kit.number,
  ]);
  return z.strictObject({ finding: identifier, where: dottedName, figure: figure.optional(), because: words });
}

/** Front matter of one log entry; its kind follows from its keys. */
export function entrySchema(kit: QuantityKit) {
  return z.strictObject({
    date: calendarDate,
    chapter: chapterName,
    /** hands that worked */
    people: kit.number.optional(),
    /** minutes from start to end */
    minutes: kit.number.optional(),
    /** ids of steps finished */
    done: z.array(dottedName).default([]),
    /** ids of part instances made, or of a drawer or leg for all its pieces */
    made: z.array(dottedName).default([]),
    /** ids of part instances put in their place */
    placed: z.array(dottedName).default([]),
    /** ids of part instances taken out of it */
    apart: z.array(dottedName).default([]),
    measured: z.array(measuredSchema(kit)).default([]),
    change: z.array(changeSchema()).default([]),
    fix: z.array(fixSchema(kit)).default([]),
    laid: z.array(laidSchema(kit)).default([]),
    trial: z.array(trialSchema(kit)).default([]),
    decided: z.array(z.strictObject({ what: words, 'rather-than': words.optional(), because })).default([]),
    hidden: z.array(hiddenSchema).default([]),
    photos: z.array(photoSchema).default([]),
    upkeep: z.array(z.strictObject({ what: words, 'again-in': kit.months })).default([]),
    spent: kit.money.optional(),
    accept: z.array(acceptSchema(kit)).default([]),
    renamed: renamed.optional(),
  });
}

/** One entry with the name of its file, `2026-03-14-words`. */
export type Entry = z.output<ReturnType<typeof entrySchema>> & { readonly id: string };
