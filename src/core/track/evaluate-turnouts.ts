import type { Dimension, Quantity } from '../units/quantity.ts';
import type { Track } from './schema.ts';
import type { Turnout, TurnoutForm } from './turnout.ts';

type Read = (quantity: Quantity<Dimension>) => number;
type Source = Track['turnouts'][string];

/** All turnouts of the chapter, by id in order of writing. */
export function readTurnouts(track: Track, read: Read): readonly Turnout[] {
  return Object.entries(track.turnouts).map(([id, source]): Turnout => {
    const motor = 'motor' in source ? source.motor : undefined;
    const bar = 'throw' in source ? source.throw : undefined;
    return {
      id,
      form: formOf(source, read),
      frog: ('frog-type' in source ? source['frog-type'] : undefined) ?? null,
      motor:
        motor === undefined ? null : { along: read(motor.along), across: read(motor.across), below: read(motor.below) },
      throwBar: bar === undefined ? null : read(bar),
      at: `track.turnouts.${id}`,
    };
  });
}

function formOf(source: Source, read: Read): TurnoutForm {
  if ('frog' in source) return { kind: 'frog', number: read(source.frog), hand: source.hand };
  if (!('form' in source)) return templateOf(source, read);
  switch (source.form) {
    case 'curved': {
      const arc = (one: typeof source.outer) => ({ radius: read(one.radius), angle: read(one.angle) });
      return { kind: 'curved', hand: source.hand, outer: arc(source.outer), inner: arc(source.inner) };
    }
    case 'wye':
      return { kind: 'wye', angle: read(source.angle), radius: read(source.radius) };
    case 'three-way': {
      const { straight, angle, radius } = source;
      return { kind: 'three-way', straight: read(straight), angle: read(angle), radius: read(radius) };
    }
    case 'crossing':
      return { kind: 'crossing', hand: source.hand, straight: read(source.straight), angle: read(source.angle) };
    case 'slip': {
      const { straight, angle, slips, hand } = source;
      return { kind: 'slip', hand, straight: read(straight), angle: read(angle), slips };
    }
  }
}

type Template = Exclude<Source, { readonly frog: Quantity<'number'> } | { readonly form: string }>;

function templateOf(source: Template, read: Read): TurnoutForm {
  const maybe = (quantity: Quantity<Dimension> | undefined) => (quantity === undefined ? null : read(quantity));
  return {
    kind: 'template',
    hand: source.hand,
    straight: read(source.straight),
    angle: read(source.angle),
    radius: maybe(source.radius),
    lead: maybe(source.lead) ?? 0,
    branch: maybe(source.branch),
  };
}
