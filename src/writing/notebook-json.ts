import type { CutBound, CutSheet } from '../core/cutting/job.ts';
import type { Finding } from '../core/finding.ts';
import type { NamedDimension, Notebook } from '../core/notebook.ts';
import type { Step } from '../core/steps/step.ts';
import type { Fastener, HardwareUse } from '../core/stock/fastener.ts';
import type { Joint, Part, Placement } from '../core/stock/part.ts';
import { type Sentence, type ShowLength, spoken } from '../core/units/say.ts';
import { showLength } from '../core/units/show.ts';
import { assemblyJson, machiningJson } from './assembly-json.ts';
import { byDimension, type Json, millionth, plain, thousandth } from './rounded.ts';
import { requestJson, sceneryJson } from './scenery-json.ts';
import { savingJson, shoppingJson, yardJson } from './shopping-json.ts';
import { fixesJson, stateJson } from './state-json.ts';
import { trackJson } from './track-json.ts';
import { wiringJson } from './wiring-json.ts';

type Say = (sentence: Sentence) => string;

function dimensionJson({ name, text, amount }: NamedDimension): Json {
  const value = byDimension(amount.dimension)(amount.value);
  const currency = amount.currency === undefined ? {} : { currency: amount.currency };
  return { name, text, value, dimension: amount.dimension, ...currency };
}

function placeJson({ id, label, pose, marks }: Placement): Json {
  const direction = (vector: readonly number[]) => vector.map(millionth);
  return {
    id,
    label,
    origin: pose.origin.map(thousandth),
    x: direction(pose.x),
    y: direction(pose.y),
    z: direction(pose.z),
    marks: plain(marks, ['text', 'kind', 'side', 'at']),
  };
}

function partJson(part: Part, mass: number | undefined): Json {
  const { id, label, role, chapter, bench, stock, blank, features, places, cutAfterMeasuring, phase } = part;
  return {
    ...{ id, label, role, chapter, bench, stock, quantity: places.length },
    length: thousandth(blank.length),
    width: thousandth(blank.width),
    thickness: thousandth(blank.thickness),
    grain: blank.grain,
    ...(part.from === undefined ? {} : { from: part.from }),
    features: plain(features, ['id', 'kind', 'for', 'side', 'edge']),
    places: places.map(placeJson),
    mass: mass === undefined ? null : thousandth(mass),
    cutAfterMeasuring,
    phase,
  };
}

function jointJson({ id, kind, between, clearance, relief, held }: Joint): Json {
  return { id, kind, between: [...between], clearance: thousandth(clearance), relief: thousandth(relief), held };
}

function hardwareJson({ item, quantity, length, where }: HardwareUse): Json {
  return { item, quantity, length: length === null ? null : thousandth(length), where };
}

/** A screw or bolt with its place: the underside of its head, the way it goes, and the pieces it goes through. */
function fastenerJson({ id, item, form, diameter, length, holds, through, head, direction }: Fastener): Json {
  return {
    ...{ id, item, form, holds },
    diameter: thousandth(diameter),
    length: thousandth(length),
    through: [...through],
    head: head.map(thousandth),
    direction: direction.map(millionth),
  };
}

const cutKeys = ['number', 'kind', 'stage', 'from', 'setting', 'kerf', 'yields', 'part', 'x', 'y', 'length', 'width'];

function sheetJson(sheet: CutSheet): Json {
  return {
    stock: sheet.stock,
    chapter: sheet.chapter ?? 'benchwork',
    thickness: thousandth(sheet.thickness ?? 0),
    piece: sheet.piece ?? null,
    length: thousandth(sheet.length),
    width: thousandth(sheet.width),
    kerf: thousandth(sheet.kerf),
    parts: plain(sheet.parts, cutKeys),
    cuts: plain(sheet.cuts, cutKeys),
    offcuts: plain(sheet.offcuts, cutKeys),
    waste: plain(sheet.waste, cutKeys),
  };
}

function boundJson({ stock, found, proved, bound }: CutBound): Json {
  return { stock, found, proved, bound };
}

function stepJson(step: Step, say: Say): Json {
  const { id, chapter, title, generated, makes, tools, people, minutes, wait, child, where, after, closes } = step;
  return {
    ...{ id, chapter, title, generated, makes, tools, people },
    minutes: minutes === null ? null : thousandth(minutes),
    wait: thousandth(wait),
    ...{ child, where, after, closes },
    cautions: step.cautions.map(({ id: caution, text, source }) => ({ id: caution, text, source })),
    lines: step.lines.map(say),
  };
}

/** A finding as plain data, its sentences with lengths as `show` writes them. */
export function findingJson(finding: Finding, show: ShowLength): { readonly [key: string]: Json } {
  const say: Say = (sentence) => spoken(sentence, show);
  const { rule, level, where, chapter, what, figure, limit, unit, mend, source, accepted } = finding;
  return {
    ...{ rule, level, where, chapter, what: say(what) },
    figure: figure === null ? null : thousandth(figure),
    limit: limit === null ? null : thousandth(limit),
    ...{ unit, mend: say(mend), source, accepted },
  };
}

/**
 * The notebook as the JSON text that `export` writes: mm, kg and minutes to a thousandth, radians to a millionth, keys
 * in a fixed order, sentences in the notebook's own unit. Its shape is src/writing/notebook.schema.json: keys may be
 * added, never renamed.
 */
export function notebookJson(notebook: Notebook): string {
  const show: ShowLength = (mm, way) => showLength(mm, notebook.show, way);
  const say: Say = (sentence) => spoken(sentence, show);
  const { slug, title, scale, makers, licence } = notebook;
  const json: Json = {
    notebook: { slug, title, scale, show: notebook.show, makers, licence },
    dimensions: notebook.dimensions.map(dimensionJson),
    thicknesses: plain(notebook.thicknesses, ['stock', 'nominal', 'listed', 'low', 'high', 'measured']),
    benches: plain(notebook.benches, ['id', 'construction', 'place', 'x', 'y', 'turn']),
    parts: notebook.parts.map((part) => partJson(part, notebook.masses[part.id])),
    joints: notebook.joints.map(jointJson),
    seams: plain(notebook.seams, ['id', 'bench', 'on']),
    fasteners: notebook.fasteners.map(fastenerJson),
    hardware: notebook.hardware.map(hardwareJson),
    envelopes: plain(notebook.envelopes, ['id', 'of', 'kind', 'min', 'max']),
    sheets: notebook.sheets.map(sheetJson),
    bounds: notebook.bounds.map(boundJson),
    offcuts: plain(notebook.offcuts, ['label', 'stock', 'thickness', 'from', 'used', 'x', 'y', 'length', 'width']),
    yard: notebook.yard.map(yardJson),
    whatIf: notebook.whatIf.map(savingJson),
    shopping: notebook.shopping.lines.map(shoppingJson),
    assembly: assemblyJson(notebook.assembly, say),
    machining: notebook.machining.map(machiningJson),
    track: trackJson(notebook.track, notebook.trackPlan),
    scenery: sceneryJson(notebook.scenery),
    wiring: wiringJson(notebook.wiring, say),
    requests: notebook.requests.map(requestJson),
    steps: notebook.steps.map((step) => stepJson(step, say)),
    log: plain(notebook.log, ['id', 'date', 'chapter', 'title', 'what', 'part', 'line', 'set']),
    state: stateJson(notebook.state),
    fixes: fixesJson(notebook.state.fixes),
    findings: notebook.findings.map((finding) => findingJson(finding, show)),
  };
  return `${JSON.stringify(json, null, 2)}\n`;
}
