import type { Nodes, Root } from 'mdast';
import { directiveFromMarkdown } from 'mdast-util-directive';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { directive } from 'micromark-extension-directive';
import type { Problem } from '../core/units/problem.ts';
import { bodyBounds } from './body-bounds.ts';
import { directiveTelling, openContainer, type Suspect, suspectsIn } from './body-mistakes.ts';
import type { Asking } from './directive-node.ts';
import { asking, isDirective, plainText } from './directive-node.ts';
import { problemOn, type Source, spotAt } from './source.ts';

export type Heading = { readonly text: string; readonly offset: number };
export type Picture = { readonly address: string; readonly offset: number };

/** What the checks need of a body. */
export type Body = {
  readonly directives: readonly Asking[];
  readonly headings: readonly Heading[];
  readonly pictures: readonly Picture[];
  readonly problems: readonly Problem[];
};

function parsed(text: string): Root {
  return fromMarkdown(text, { extensions: [directive()], mdastExtensions: [directiveFromMarkdown()] });
}

/** All nodes in reading order, without recursion. */
function nodesOf(root: Root): readonly Nodes[] {
  const found: Nodes[] = [];
  const stack: Nodes[] = [root];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    found.push(node);
    if (!('children' in node)) continue;
    for (const child of node.children.toReversed()) stack.push(child);
  }
  return found;
}

const NOTHING: Omit<Body, 'problems'> = { directives: [], headings: [], pictures: [] };

/** Reads a body's directives, headings and pictures, and tells what is wrong with its directives. */
export function readBody(source: Source): Body {
  const bound = bodyBounds(source);
  if (bound !== null) return { ...NOTHING, problems: [bound] };
  const nodes = nodesOf(parsed(source.text));
  const directives = nodes.filter(isDirective).map(asking);
  const told = directives.flatMap((asked): Suspect[] => {
    const telling = directiveTelling(asked);
    return telling === null ? [] : [{ offset: asked.offset, telling }];
  });
  const open = nodes.flatMap((node) => [...suspectsIn(node, source), ...openContainer(node, source)]);
  const suspects = [...open, ...told.filter((one) => !open.some((other) => other.offset === one.offset))];
  return {
    directives,
    headings: nodes.flatMap((node) =>
      node.type === 'heading' ? [{ text: plainText(node), offset: node.position?.start.offset ?? 0 }] : [],
    ),
    pictures: nodes.flatMap((node) =>
      node.type === 'image' ? [{ address: node.url, offset: node.position?.start.offset ?? 0 }] : [],
    ),
    problems: suspects.map(({ offset, telling }) => problemOn(spotAt(source, offset, ''), telling)),
  };
}
