import type { Blockquote, Link, Parent, PhrasingContent, Root, RootContent } from 'mdast';
import type { ContainerDirective, LeafDirective, TextDirective } from 'mdast-util-directive';
import type {} from 'mdast-util-to-hast';
import { directiveNamed } from '../../reading/directives.ts';
import { stepOfHeading } from '../../reading/prose.ts';
import { toPlainText } from './plain-text.ts';

/** What stands in a chapter's prose where the model is to be shown. */
export type Mark =
  | { readonly kind: 'block'; readonly name: string; readonly attributes: Readonly<Record<string, string>> }
  | { readonly kind: 'photo'; readonly file: string; readonly alt: string }
  | { readonly kind: 'step'; readonly id: string }
  | { readonly kind: 'step-ends' };

/** What prose may ask the model: a value in both units as words, or null if there is none of that name. */
export type Asked = {
  readonly value: (name: string) => { readonly mm: string; readonly in: string } | null;
  /** the chapter's own names of its steps, `rout` */
  readonly steps: ReadonlySet<string>;
  /** filled while the prose is read, in order */
  readonly marks: Mark[];
};

/** The element a mark becomes; prose is split at it, and no author can write one. */
export const MARK = 'fb-mark';

const IN_STEP: readonly string[] = ['drawing', 'photo'];

/** A list belongs to the chapter, so it ends the step it stands after; a drawing or photo belongs to the step. */
function endsStep(node: RootContent): boolean {
  return node.type === 'leafDirective' && !IN_STEP.includes(node.name);
}

/** The reader tells such mistakes first and better; this holds if a chapter ever comes by another way. */
function refuseUnknown(node: LeafDirective | ContainerDirective): void {
  const form = node.type === 'leafDirective' ? 'leaf' : 'container';
  if (directiveNamed(node.name)?.form === form) return;
  throw new Error(`line ${node.position?.start.line ?? 1}: no block is called '${node.name}' here`);
}

function marker(asked: Asked, mark: Mark): RootContent {
  asked.marks.push(mark);
  const properties = { n: String(asked.marks.length - 1) };
  return { type: 'paragraph', children: [], data: { hName: MARK, hProperties: properties } };
}

function attributesOf(node: LeafDirective): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(node.attributes ?? {}).map(([key, value]) => [key, value ?? '']));
}

function blockOf(node: LeafDirective, asked: Asked): RootContent {
  refuseUnknown(node);
  const attributes = attributesOf(node);
  if (node.name !== 'photo') return marker(asked, { kind: 'block', name: node.name, attributes });
  return marker(asked, {
    kind: 'photo',
    file: attributes.file ?? '',
    alt: toPlainText(node.children) || (attributes.alt ?? ''),
  });
}

/** A colon before a word is mostly just that, as in 1:N: what is no value goes back to what was typed. */
function inlineOf(node: TextDirective, asked: Asked, source: string): PhrasingContent {
  const typed = source.slice(node.position?.start.offset ?? 0, node.position?.end.offset ?? 0);
  if (node.name !== 'value') return { type: 'text', value: typed };
  const name = toPlainText(node.children);
  const value = asked.value(name);
  if (value === null)
    throw new Error(`line ${node.position?.start.line ?? 1}: nothing in this notebook is called '${name}'`);
  if (value.mm === value.in) return { type: 'text', value: value.mm };
  const each = (unit: 'mm' | 'in'): PhrasingContent => ({
    type: 'emphasis',
    children: [{ type: 'text', value: value[unit] }],
    data: { hName: 'span', hProperties: { className: [unit] } },
  });
  return {
    type: 'emphasis',
    children: [each('mm'), each('in')],
    data: { hName: 'span', hProperties: { className: ['length'] } },
  };
}

/** The name of a file beside the chapter, or null when an address leads elsewhere. */
export function photoFile(address: string): string | null {
  const name = address.replace(/^(?:\.\/)?photos\//, '');
  return /^\w[\w.-]*$/.test(name) ? name : null;
}

/** Raw HTML is shown as the text it is, comments go; a picture from elsewhere becomes a link to it. */
function harmless(node: RootContent, asked: Asked): RootContent[] {
  if (node.type === 'html')
    return /^\s*<!--[\s\S]*?-->\s*$/.test(node.value) ? [] : [{ type: 'text', value: node.value }];
  if (node.type !== 'image') return [node];
  const file = photoFile(node.url);
  if (file !== null) return [marker(asked, { kind: 'photo', file, alt: node.alt ?? '' })];
  const link: Link = {
    type: 'link',
    url: node.url,
    children: [{ type: 'text', value: node.alt || 'a picture elsewhere' }],
  };
  return [link];
}

function isParent(node: RootContent): node is RootContent & Parent {
  return 'children' in node;
}

function isMark(node: RootContent): boolean {
  return node.type === 'paragraph' && node.data?.hName === MARK;
}

/** A mark in the middle of a paragraph stands on its own, between what came before it and what comes after. */
function aroundMarks(node: RootContent): RootContent[] {
  if (node.type !== 'paragraph' || !node.children.some(isMark)) return [node];
  const out: RootContent[] = [];
  let words: PhrasingContent[] = [];
  const close = () => {
    if (words.some((word) => toPlainText([word]).trim() !== '')) out.push({ type: 'paragraph', children: words });
    words = [];
  };
  for (const child of node.children) {
    if (isMark(child)) {
      close();
      out.push(child);
    } else words.push(child);
  }
  close();
  return out;
}

/** Words set apart, with a title of their own. */
function noteOf(node: ContainerDirective, asked: Asked, source: string): RootContent {
  refuseUnknown(node);
  const label = node.children.find((child) => child.type === 'paragraph' && child.data?.directiveLabel === true);
  const title = node.attributes?.title ?? toPlainText(label === undefined ? [] : [label]);
  const rest = node.children.filter((child) => child !== label).flatMap((child) => replaced(child, asked, source));
  const heading: RootContent = {
    type: 'paragraph',
    children: [{ type: 'strong', children: [{ type: 'text', value: title }] }],
  };
  const children: RootContent[] = title === '' ? rest : [heading, ...rest];
  return {
    type: 'blockquote',
    children,
    data: { hName: 'div', hProperties: { className: ['set-apart'] } },
  } as Blockquote;
}

function replaced(node: RootContent, asked: Asked, source: string): RootContent[] {
  if (node.type === 'textDirective') return [inlineOf(node, asked, source)];
  if (node.type === 'leafDirective') return [blockOf(node, asked)];
  if (node.type === 'containerDirective') return [noteOf(node, asked, source)];
  if (isParent(node)) node.children = node.children.flatMap((child) => replaced(child, asked, source));
  return harmless(node, asked).flatMap(aroundMarks);
}

/** The name of the step a heading stands for, else null. */
function stepOf(node: RootContent, asked: Asked): string | null {
  if (node.type !== 'heading') return null;
  return stepOfHeading(toPlainText(node.children), asked.steps);
}

/** Marks where each written step begins and ends: until the next heading as high, or a list of the chapter's. */
function withSteps(nodes: readonly RootContent[], asked: Asked, source: string): RootContent[] {
  const out: RootContent[] = [];
  let depth: number | null = null;
  const end = () => {
    if (depth !== null) out.push(marker(asked, { kind: 'step-ends' }));
    depth = null;
  };
  for (const node of nodes) {
    if ((node.type === 'heading' && depth !== null && node.depth <= depth) || endsStep(node)) end();
    const step = stepOf(node, asked);
    if (step !== null && node.type === 'heading') {
      end();
      out.push(marker(asked, { kind: 'step', id: step }));
      depth = node.depth;
    } else out.push(...replaced(node, asked, source).map(standing));
  }
  end();
  return out;
}

/** Words left by raw HTML between paragraphs become one. */
function standing(node: RootContent): RootContent {
  return node.type === 'text' ? { type: 'paragraph', children: [node] } : node;
}

/** Headings of a chapter start below the page's own. */
function lowered(nodes: readonly RootContent[]): void {
  for (const node of nodes) if (node.type === 'heading' && node.depth === 1) node.depth = 2;
}

/** Remark plugin: values, blocks and steps of a chapter become marks and words of the model. */
export function remarkNotebook(asked: Asked) {
  return (tree: Root, file: { toString(): string }): void => {
    lowered(tree.children);
    tree.children = withSteps(tree.children, asked, String(file));
  };
}
