import type { Nodes } from 'mdast';
import { nearest } from '../core/units/nearest.ts';
import { type Asking, labelOf } from './directive-node.ts';
import { DIRECTIVES, type Directive, directiveNamed } from './directives.ts';
import type { Source, Telling } from './source.ts';

function example(known: Directive): string {
  return `write \`${known.example}\``;
}

const WHERE: Readonly<Record<Directive['form'], string>> = {
  text: 'stands inside a sentence, with one colon',
  leaf: 'stands on a line of its own, with two colons',
  container: 'stands round a block: a line with three colons before it and one after',
};

function attributeTelling(asked: Asking, known: Directive): Telling | null {
  const names = known.attributes.map((attribute) => attribute.name);
  const unknown = Object.keys(asked.attributes).find((name) => !names.includes(name));
  if (unknown !== undefined) {
    const near = nearest(unknown, names);
    const hint = near === null ? '' : `did you mean \`${near}\`? `;
    return {
      rule: 'directive-key',
      what: `\`${unknown}\` is not a key of \`${asked.name}\``,
      mend: hint + example(known),
    };
  }
  const missing = known.attributes.find(
    (attribute) => attribute.required && (asked.attributes[attribute.name] ?? '') === '',
  );
  if (missing !== undefined) {
    return { rule: 'directive-key', what: `\`${asked.name}\` needs \`${missing.name}\``, mend: example(known) };
  }
  return null;
}

/** What is wrong with a directive, or null; an unknown word inside a sentence is ordinary text, such as 1:87. */
export function directiveTelling(asked: Asking): Telling | null {
  const known = directiveNamed(asked.name);
  if (known === undefined) return asked.form === 'text' ? null : unknownTelling(asked);
  if (known.form !== asked.form) {
    if (asked.form === 'text' && asked.label === '' && Object.keys(asked.attributes).length === 0) return null;
    return { rule: 'directive-form', what: `\`${asked.name}\` ${WHERE[known.form]}`, mend: example(known) };
  }
  const attribute = attributeTelling(asked, known);
  if (attribute !== null) return attribute;
  const label = asked.label.trim() === '' ? (asked.attributes.alt ?? '').trim() : asked.label;
  if (known.label === 'required' && label === '') {
    return { rule: 'directive-label', what: `\`${asked.name}\` needs words in square brackets`, mend: example(known) };
  }
  return null;
}

function unknownTelling(asked: Asking): Telling {
  const names = DIRECTIVES.filter((known) => known.form === asked.form).map((known) => known.name);
  const near = nearest(asked.name, names);
  const hint = near === null ? '' : `did you mean \`${near}\`? `;
  const what = `\`${asked.name}\` is not a block this notebook knows`;
  return { rule: 'directive', what, mend: `${hint}known are ${names.map((name) => `\`${name}\``).join(', ')}` };
}

export type Suspect = { readonly offset: number; readonly telling: Telling };

/** Text in which a directive began and did not end: the reader took it for words. */
export function suspectsIn(node: Nodes, source: Source): readonly Suspect[] {
  if (node.type !== 'text' && node.type !== 'textDirective') return [];
  const start = node.position?.start.offset ?? 0;
  const end = node.position?.end.offset ?? start;
  const raw = source.text.slice(start, end);
  if (node.type === 'textDirective') {
    const next = source.text.charAt(end);
    const open = directiveNamed(node.name)?.form === 'text' && labelOf(node) === '' && (next === '[' || next === '{');
    return open ? [{ offset: start, telling: unclosed(node.name) }] : [];
  }
  return [...raw.matchAll(/(^|[^:\w\\])(:{2,3})([a-z][\w-]*)|^(:::)[ \t]*$/gm)].flatMap((match): Suspect[] => {
    const at = start + match.index + (match[1] ?? '').length;
    if (match[4] !== undefined) return [{ offset: start + match.index, telling: strayEnd }];
    const known = directiveNamed(match[3] ?? '');
    if (known === undefined) return [];
    const alone = source.text.slice(source.text.lastIndexOf('\n', at - 1) + 1, at).trim() === '';
    const telling = alone
      ? unclosed(known.name)
      : { rule: 'directive-form', what: `\`${known.name}\` ${WHERE[known.form]}`, mend: example(known) };
    return [{ offset: at, telling }];
  });
}

const strayEnd: Telling = {
  rule: 'directive-end',
  what: 'three colons end a block here, and none is open',
  mend: 'take the line away, or begin the block with `:::note`',
};

function unclosed(name: string): Telling {
  const known = directiveNamed(name);
  const what = `\`${name}\` begins here and its bracket or brace is never closed, or more words follow on its line`;
  return {
    rule: 'directive-unclosed',
    what,
    mend: known === undefined ? 'close it' : `${example(known)}, and nothing else after it`,
  };
}

/** A container that the end of the text closed. */
export function openContainer(node: Nodes, source: Source): readonly Suspect[] {
  if (node.type !== 'containerDirective') return [];
  const raw = source.text.slice(node.position?.start.offset ?? 0, node.position?.end.offset ?? 0).trimEnd();
  const last = raw.slice(raw.lastIndexOf('\n') + 1);
  if (/^[\s>]*:{3,}$/.test(last)) return [];
  const telling = {
    rule: 'directive-unclosed',
    what: `the block \`${node.name}\` that begins here is never closed`,
    mend: 'put a line `:::` after its last line',
  };
  return [{ offset: node.position?.start.offset ?? 0, telling }];
}
