import type { Pair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { partAddress, pieceLabel, wholeName } from './parts.ts';
import { plainName } from './words.ts';

/** Markup within a line, where a stray space would show: made here, not in templates. */
export type Html = string & { readonly html: true };

function html(text: string): Html {
  return text as Html;
}

const MARKED: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Words as they are. */
export function text(words: string): Html {
  return html(words.replace(/[&<>"]/g, (letter) => MARKED[letter] ?? letter));
}

/** A link; the address is one of this site's own. */
export function link(address: string, words: string): Html {
  return html(`<a href="${text(address)}">${text(words)}</a>`);
}

/** The same words in both units, of which the page shows one. */
export function both(pair: Pair): Html {
  if (pair.mm === pair.in) return text(pair.mm);
  return html(
    `<span class="length"><span class="mm">${text(pair.mm)}</span><span class="in">${text(pair.in)}</span></span>`,
  );
}

export function line(...pieces: readonly Html[]): Html {
  return html(pieces.join(''));
}

/** Pieces with commas between. */
export function listed(pieces: readonly Html[]): Html {
  return html(pieces.join(', '));
}

/** `S1, E1 and C1`: pieces within a sentence that has commas of its own. */
export function listedAnd(pieces: readonly Html[]): Html {
  const [last = text(''), ...rest] = pieces.toReversed();
  return rest.length === 0 ? last : line(listed(rest.toReversed()), text(' and '), last);
}

/** Smaller words on a line of their own below. */
export function below(words: Html): Html {
  return html(`<span class="aside whole">${words}</span>`);
}

/** Words that must not be passed over. */
export function strong(words: string): Html {
  return html(`<strong>${text(words)}</strong>`);
}

/** A label keeps to one line, `FC1-1`, unless it is too long for a phone. */
const LONGEST_UNBROKEN = 16;

/** A part or one of its pieces by name, linked to its page where it has one. */
export function partLink(book: Book, id: string, words = plainName(id)): Html {
  const address = partAddress(book, id);
  const named = address === null ? text(words) : link(address, words);
  return words.length > LONGEST_UNBROKEN ? named : html(`<span class="piece">${named}</span>`);
}

/** Pieces by the labels on the wood, each linked to its page. */
export function partLinks(book: Book, ids: readonly string[]): Html {
  return listed(ids.map((id) => partLink(book, id, pieceLabel(book, id))));
}

/** A drawer or leg by its name, else the labels of what comes off. */
export function piecesOf(book: Book, parts: readonly string[]): Html {
  const links = partLinks(book, parts);
  const whole = parts.length < 2 ? null : wholeName(parts);
  return whole === null ? links : line(text(`${plainName(whole)} (`), links, text(')'));
}
