import type { Element, ElementContent, Root, RootContent } from 'hast';

/** Elements that Markdown makes, and which attributes each may keep. */
const KEPT: Readonly<Record<string, readonly string[]>> = {
  a: ['href', 'id', 'dataFootnoteRef', 'dataFootnoteBackref', 'ariaDescribedBy', 'ariaLabel', 'className'],
  blockquote: [],
  br: [],
  code: [],
  del: [],
  div: ['className'],
  em: [],
  'fb-mark': ['n'],
  h1: ['id'],
  h2: ['id', 'className'],
  h3: ['id'],
  h4: ['id'],
  h5: ['id'],
  h6: ['id'],
  hr: [],
  li: ['id', 'className'],
  ol: ['start', 'className'],
  p: [],
  pre: [],
  section: ['dataFootnotes', 'className'],
  span: ['className'],
  strong: [],
  sup: [],
  table: [],
  tbody: [],
  td: [],
  th: [],
  thead: [],
  tr: [],
  ul: ['className'],
};

/** True for an address a page may link to: the web, mail, or a place of this site. */
export function linkable(address: string): boolean {
  // Browsers skip spaces and control characters inside a scheme: `java\nscript:` still runs.
  const bare = [...address].filter((letter) => letter > ' ' && letter !== '\u007F').join('');
  const scheme = /^([^/?#:]*):/.exec(bare)?.[1];
  return scheme === undefined || ['http', 'https', 'mailto'].includes(scheme.toLowerCase());
}

function keptProperties(element: Element, names: readonly string[]): Element['properties'] {
  const entries = Object.entries(element.properties).filter(([name]) => names.includes(name));
  return Object.fromEntries(entries);
}

function aligned(element: Element): Element['properties'] {
  const { align } = element.properties;
  return typeof align === 'string' && ['left', 'center', 'right'].includes(align) ? { className: [`to-${align}`] } : {};
}

/** A table scrolls by itself on a narrow screen; a keyboard can reach it. */
function scrolling(table: Element): Element {
  const properties = { className: ['scrolls'], tabIndex: 0, role: 'group', ariaLabel: 'Table' };
  return { type: 'element', tagName: 'div', properties, children: [table] };
}

function safeElement(element: Element): ElementContent[] {
  const children = element.children.flatMap(safeNode);
  if (element.tagName === 'img') return [{ type: 'text', value: String(element.properties.alt ?? '') }];
  if (element.tagName === 'input') return [{ type: 'text', value: element.properties.checked ? '\u2611' : '\u2610' }];
  const names = Object.hasOwn(KEPT, element.tagName) ? KEPT[element.tagName] : undefined;
  if (names === undefined) return children;
  const properties = { ...keptProperties(element, names), ...aligned(element) };
  const safe: Element = { type: 'element', tagName: element.tagName, properties, children };
  if (element.tagName === 'table') return [scrolling(safe)];
  if (element.tagName !== 'a') return [safe];
  return safeLink(safe);
}

function safeLink(link: Element): ElementContent[] {
  const address = link.properties.href;
  if (typeof address !== 'string' || !linkable(address)) return link.children;
  if (/^https?:|^\/\//i.test(address)) link.properties.rel = ['noopener', 'noreferrer'];
  return [link];
}

function safeNode(node: RootContent): ElementContent[] {
  if (node.type === 'element') return safeElement(node);
  if (node.type === 'text') return [node];
  return [];
}

/** Rehype plugin: only what Markdown itself can write is left, and no address that runs. */
export function rehypeSafe() {
  return (tree: Root): void => {
    tree.children = tree.children.flatMap(safeNode);
  };
}
