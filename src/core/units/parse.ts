import { type Reader, treeOf } from './arithmetic.ts';
import { plain } from './characters.ts';
import { evaluateTree } from './evaluate.ts';
import { settled } from './expected.ts';
import { footMarkFault, LONGEST_BY_MARK } from './foot-mark.ts';
import { looksLike } from './looks-like.ts';
import { faultAt, Misread } from './misread.ts';
import { namesIn } from './names.ts';
import { done, failed, type Result } from './problem.ts';
import type { Dimension, Expression } from './quantity.ts';
import { wrongDimension } from './wrong-dimension.ts';

/** Longest text of one value: no value a person writes comes near. */
export const LONGEST_TEXT = 400;

function readTree(reader: Reader, bare: 'mm' | null): Result<Expression> {
  const tree = settled(treeOf(reader), { expected: reader.dimension, bare, text: reader.text });
  if (namesIn(tree).length > 0) return done(tree);
  const amount = evaluateTree(tree, {}, '');
  if (!amount.ok) return amount;
  const fault =
    wrongDimension(amount.value, reader.dimension, { tree, at: '' }) ??
    (reader.dimension === 'length' ? footMarkFault(reader.text, LONGEST_BY_MARK) : null);
  return fault === null ? done(tree) : failed(fault);
}

function attempt(reader: Reader, bare: 'mm' | null): Result<Expression> {
  try {
    return readTree(reader, bare);
  } catch (stop) {
    if (stop instanceof Misread) return failed(stop.fault);
    throw stop;
  }
}

/**
 * Reads a value as an author writes it: a literal with its unit, or arithmetic over named dimensions.
 * `bare: 'mm'` lets numbers without a unit be millimetres. Faults carry `at: ''` and their offset into the text.
 * Values in the core's units; nothing is computed but what has no names in it, to find its faults early.
 */
export function parseQuantity(
  text: string,
  dimension: Dimension,
  options: { readonly bare: 'mm' | null },
): Result<Expression> {
  if (text.length > LONGEST_TEXT) {
    const what = `this value has ${text.length} characters`;
    return failed(faultAt(0, 'too-long', [what, `write ${LONGEST_TEXT} characters at most`]));
  }
  const reader = { text: plain(text), dimension };
  if (reader.text.trim() === '') {
    return failed(faultAt(0, 'value-missing', ['there is no value', 'write a value with its unit']));
  }
  const tree = attempt(reader, options.bare);
  const other = tree.ok ? null : looksLike(reader.text, dimension);
  return other === null ? tree : failed(other);
}
