import type { EdgeSide, Feature, Part, Patch } from '../../stock/part.ts';
import type { Machines, Operation, OperationKind, Surface } from './operation.ts';
import { NO_SET_UP, routerSetUp } from './set-up.ts';

/** A cut across the part: a square guide bears on one long edge and is clamped to the other; the stop is the left end. */
const ACROSS: readonly Surface[] = ['edge.bottom', 'edge.top', 'edge.left'];

/** The operations of a part from its blank and its features, in no order yet; each names what it needs and destroys. */
export function operationsOf(part: Part, machines: Machines): readonly Operation[] {
  const { length, width } = part.blank;
  const sawn: readonly Operation[] = [
    { ...bare('rip', 'table-saw'), id: 'rip', setUp: { ...NO_SET_UP, fence: width } },
    { ...bare('crosscut', 'table-saw'), id: 'crosscut', setUp: { ...NO_SET_UP, stop: length } },
  ];
  return [...sawn, ...part.features.map((feature, i) => named(operationOf(part, feature, machines), feature, i))];
}

type Unnamed = Omit<Operation, 'id' | 'features'>;

function named(operation: Unnamed, feature: Feature, i: number): Operation {
  const id = feature.id === '' ? `${operation.kind}-${i + 1}` : feature.id;
  return { ...operation, id, features: feature.id === '' ? [] : [feature.id] };
}

function bare(kind: OperationKind, tool: string): Operation {
  return { id: kind, kind, tool, needs: [], destroys: [], features: [], setUp: NO_SET_UP };
}

function operationOf(part: Part, feature: Feature, machines: Machines): Unnamed {
  switch (feature.kind) {
    case 'dado':
    case 'stopped-dado':
    case 'rabbet':
    case 'groove':
      return pocket(feature, machines);
    case 'notch':
      return slot(part, feature, machines);
    case 'hole':
    case 'counterbore':
      return bored(feature);
    case 'opening':
    case 'cut-out':
      return { ...bare('opening', 'router'), needs: ['edge.left', 'edge.bottom'] };
    case 'mitre':
      return { ...bare('mitre', 'table-saw'), needs: mitreNeeds(feature.edge), destroys: [`edge.${feature.edge}`] };
    case 'taper':
      return { ...bare('taper', 'table-saw'), needs: ['face'], destroys: [`edge.${feature.edge}`] };
    case 'roundover':
      return { ...bare('roundover', 'router'), destroys: [`edge.${feature.edge}`] };
    case 'rounded-corner':
      return bare('rounded-corner', 'jigsaw');
    case 'trim':
      return { ...bare('trim', 'router'), destroys: [`edge.${feature.edge}`] };
  }
}

function isAcross({ x0, x1, y0, y1 }: Patch): boolean {
  return x1 - x0 <= y1 - y0;
}

type Pocket = Extract<Feature, { readonly kind: 'dado' | 'stopped-dado' | 'rabbet' | 'groove' }>;

function pocket({ kind, patch, depth }: Pocket, machines: Machines): Unnamed {
  const across = isAcross(patch);
  const needs: readonly Surface[] = across ? [...ACROSS, 'face'] : ['edge.bottom', 'face'];
  const own = kind === 'stopped-dado' ? 'dado' : kind;
  return { ...bare(own, 'router'), needs, setUp: routerSetUp({ patch, depth, across }, machines) };
}

function slot(part: Part, feature: Extract<Feature, { readonly kind: 'notch' }>, machines: Machines): Unnamed {
  const across = feature.edge === 'top' || feature.edge === 'bottom';
  const setUp = routerSetUp({ patch: feature.patch, depth: part.blank.thickness, across }, machines);
  return { ...bare('slot', 'router'), needs: across ? ACROSS : ['edge.bottom', 'edge.top'], setUp };
}

function bored(feature: Extract<Feature, { readonly kind: 'hole' | 'counterbore' }>): Unnamed {
  const centre: Surface = `centre.${feature.at.join(',')}`;
  const needs: readonly Surface[] = ['edge.left', 'edge.bottom'];
  const setUp = { ...NO_SET_UP, bit: feature.diameter, depth: feature.depth === 'through' ? null : feature.depth };
  return feature.kind === 'hole'
    ? { ...bare('hole', 'drill'), needs, destroys: [centre], setUp }
    : { ...bare('counterbore', 'drill'), needs: [...needs, centre], setUp };
}

/** An end is mitred against both long edges; a long edge is bevelled with its face on the saw's table. */
function mitreNeeds(edge: EdgeSide): readonly Surface[] {
  return edge === 'left' || edge === 'right' ? ['edge.bottom', 'edge.top'] : ['face'];
}
