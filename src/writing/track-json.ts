import { curvatureOn, type Element, stanceOn } from '../core/track/element.ts';
import type { TrackInput } from '../core/track/input.ts';
import type { LaidTurnout } from '../core/track/laid.ts';
import type { LaidLine, TrackModel } from '../core/track/lay.ts';
import type { FoundValue } from '../core/track/line.ts';
import { heightAt } from '../core/track/profile.ts';
import { type RadiusRoom, type RadiusStop, radiusRooms } from '../core/track/radius-room.ts';
import type { SetOutRow } from '../core/track/set-out.ts';
import type { Stance } from '../core/track/stretch.ts';
import { endStance, isEnd } from '../core/track/turnout-shape.ts';
import { type Json, millionth, thousandth } from './rounded.ts';

function stanceJson({ x, y, heading }: Stance): Json {
  return { x: thousandth(x), y: thousandth(y), heading: millionth(heading) };
}

/** Radius with its hand, positive to the left; null for straight. */
function radiusJson(k: number): Json {
  return k === 0 ? null : thousandth(1 / k);
}

function elementJson(element: Element): Json {
  const { kind, piece, turnout, from, length } = element;
  return {
    ...{ kind, piece, turnout, from: thousandth(from), length: thousandth(length) },
    start: stanceJson(stanceOn(element, 0)),
    end: stanceJson(stanceOn(element, length)),
    radiusAtStart: radiusJson(curvatureOn(element, 0)),
    radiusAtEnd: radiusJson(curvatureOn(element, length)),
  };
}

function unknownJson({ piece, what, value }: FoundValue): Json {
  return { piece, what, value: what === 'through' ? millionth(value) : thousandth(value) };
}

function lineJson({ id, phase, length, extents, unknowns, elements, joints, profile, ends, ...line }: LaidLine): Json {
  const { x0, x1, y0, y1 } = extents;
  return {
    ...{ id, phase, from: line.from, ends, length: thousandth(length) },
    extents: { x0: thousandth(x0), x1: thousandth(x1), y0: thousandth(y0), y1: thousandth(y1) },
    unknowns: unknowns.map(unknownJson),
    elements: elements.map(elementJson),
    joints: joints.map(({ id: joint, at, ...stance }) => ({ id: joint, at: thousandth(at), ...placed(stance) })),
    heights: profile.breaks.map(({ at, height }) => ({ at: thousandth(at), height: thousandth(height) })),
    verticalCurves: profile.curves.map(({ from, to }) => ({
      from: thousandth(from),
      to: thousandth(to),
      startHeight: thousandth(heightAt(profile, from)),
      endHeight: thousandth(heightAt(profile, to)),
    })),
  };
}

function placed({ x, y, heading }: Stance) {
  return { x: thousandth(x), y: thousandth(y), heading: millionth(heading) };
}

function turnoutJson({ id, line, enters, leaves, shape, place, turnout }: LaidTurnout): Json {
  const ends = Object.keys(shape.ends).filter(isEnd);
  return {
    ...{ id, form: turnout.form.kind, line, enters: thousandth(enters), leaves: thousandth(leaves) },
    place: stanceJson(place),
    ends: Object.fromEntries(ends.map((end) => [end, stanceJson(endStance(shape, end, place))])),
  };
}

function setOutJson(row: SetOutRow): Json {
  const maybe = (value: number | null) => (value === null ? null : thousandth(value));
  const { id, kind, line, bench, at, x, y, diagonals, radius, along, offset, onDeck } = row;
  return {
    ...{ id, kind, line, bench, at: maybe(at), x: thousandth(x), y: thousandth(y) },
    diagonals: diagonals === null ? null : diagonals.map(thousandth),
    ...{ radius: maybe(radius), along: maybe(along), offset: maybe(offset), onDeck },
  };
}

function stopJson(stop: RadiusStop | null): Json {
  if (stop === null || stop.kind === 'closing') return stop;
  return { ...stop, at: thousandth(stop.at) };
}

/** How large a radius can become, and what is then found anew. */
function radiusRoomJson({ line, piece, radius, largest, stop, lines }: RadiusRoom): Json {
  return {
    ...{ line, piece, radius: thousandth(radius) },
    largest: largest === null ? null : thousandth(largest),
    stop: stopJson(stop),
    lines: lines.map(({ id, length, unknowns }) => ({
      ...{ id, length: thousandth(length.after), unknowns: unknowns.after.map(unknownJson) },
    })),
  };
}

/** The track for notebook.json: notebook coordinates, pieces counted from 0, set-out from each bench's left and front edges. */
export function trackJson(track: TrackModel | null, read: TrackInput | null): Json {
  if (track === null) return null;
  return {
    gauge: thousandth(track.gauge),
    railHeight: thousandth(track.railHeight),
    lines: track.lines.map(lineJson),
    turnouts: track.turnouts.map(turnoutJson),
    setOut: track.setOut.map(setOutJson),
    radii: read === null ? [] : radiusRooms(read).map(radiusRoomJson),
  };
}
