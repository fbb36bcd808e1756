import type { Nodes } from 'mdast';
import type { Directive } from './directives.ts';

/** A directive as written, with the offset of its colon in the body. */
export type Asking = {
  readonly name: string;
  readonly form: Directive['form'];
  readonly attributes: Readonly<Record<string, string>>;
  readonly label: string;
  readonly offset: number;
};

const FORMS = { textDirective: 'text', leafDirective: 'leaf', containerDirective: 'container' } as const;

export function plainText(node: Nodes): string {
  if ('value' in node) return node.value;
  return 'children' in node ? node.children.map(plainText).join('') : '';
}

export type DirectiveNode = Extract<Nodes, { type: keyof typeof FORMS }>;

export function isDirective(node: Nodes): node is DirectiveNode {
  return node.type in FORMS;
}

export function labelOf(node: DirectiveNode): string {
  if (node.type !== 'containerDirective') return node.children.map(plainText).join('');
  const [first] = node.children;
  return first?.type === 'paragraph' && first.data?.directiveLabel === true ? plainText(first) : '';
}

export function asking(node: DirectiveNode): Asking {
  const entries = Object.entries(node.attributes ?? {}).map(([key, value]) => [key, value ?? '']);
  return {
    name: node.name,
    form: FORMS[node.type],
    attributes: Object.fromEntries(entries),
    label: labelOf(node),
    offset: node.position?.start.offset ?? 0,
  };
}
