/** A document of our own for svg.js outside a browser: elements, attributes, children, text, and their markup. */
const marked: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

function escaped(text: string): string {
  return /[&<>"]/.test(text) ? text.replace(/[&<>"]/g, (letter) => marked[letter] ?? letter) : text;
}

type PlainNode = PlainText | PlainElement;

/** svg.js asks `instanceof window.Node`, so nodes must come from classes. */
class PlainText {
  readonly nodeType = 3;
  readonly nodeName = '#text';
  textContent: string;
  constructor(text: string) {
    this.textContent = text;
  }
  get outerHTML(): string {
    return escaped(this.textContent);
  }
}

class PlainElement {
  readonly nodeType = 1;
  readonly nodeName: string;
  readonly namespaceURI: string;
  readonly childNodes: PlainNode[] = [];
  readonly held = new Map<string, string>();
  parentNode: PlainElement | null = null;
  ownerDocument: unknown = null;
  constructor(namespace: string, name: string) {
    this.namespaceURI = namespace;
    this.nodeName = name;
  }
  get children(): readonly PlainElement[] {
    return this.childNodes.filter((node) => node instanceof PlainElement);
  }
  get attributes(): readonly { nodeName: string; nodeValue: string }[] {
    return [...this.held].map(([nodeName, nodeValue]) => ({ nodeName, nodeValue }));
  }
  setAttribute(name: string, value: string): void {
    this.held.set(name, String(value));
  }
  setAttributeNS(_namespace: string, name: string, value: string): void {
    this.held.set(name, String(value));
  }
  getAttribute(name: string): string | null {
    return this.held.get(name) ?? null;
  }
  hasAttribute(name: string): boolean {
    return this.held.has(name);
  }
  removeAttribute(name: string): void {
    this.held.delete(name);
  }
  appendChild(node: PlainNode): PlainNode {
    if (node instanceof PlainElement) node.parentNode = this;
    this.childNodes.push(node);
    return node;
  }
  set textContent(text: string) {
    this.childNodes.length = 0;
    if (text !== '') this.childNodes.push(new PlainText(text));
  }
  get outerHTML(): string {
    let markup = `<${this.nodeName}`;
    for (const [name, value] of this.held) markup += ` ${name}="${escaped(value)}"`;
    markup += '>';
    for (const node of this.childNodes) markup += node.outerHTML;
    return `${markup}</${this.nodeName}>`;
  }
}

/** What svg.js needs of a document; a browser's own document has it too. */
export type DrawingDocument = Pick<Document, 'createElementNS' | 'defaultView'>;

/** A fresh document for drawing outside a browser. */
export function plainDocument(): DrawingDocument {
  const document = {
    createElementNS(namespace: string, name: string) {
      const element = new PlainElement(namespace, name);
      element.ownerDocument = document;
      return element;
    },
    createTextNode: (text: string) => new PlainText(text),
    createDocumentFragment: () => new PlainElement('', '#document-fragment'),
    defaultView: { Node: PlainElement, SVGElement: PlainElement },
  };
  // The plain document has only what svg.js touches; its nodes are no DOM nodes, so the compiler has to be told.
  return document as unknown as DrawingDocument;
}
