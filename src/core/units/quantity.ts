/** What a value measures. Inside the core: mm, radians, minutes, months, A, V, ohm, W, g, kg/m3, N/mm2, mm3. Grades are ratios. */
export type Dimension =
  | 'number'
  | 'length'
  | 'angle'
  | 'grade'
  | 'duration'
  | 'months'
  | 'money'
  | 'current'
  | 'voltage'
  | 'resistance'
  | 'power'
  | 'mass'
  | 'density'
  | 'stress'
  | 'volume';

/** Arithmetic as the author wrote it; `from` and `to` are offsets into the text, so that a fault can point. */
export type Expression =
  | ({
      readonly kind: 'literal';
      readonly value: number;
      readonly dimension: Dimension;
      readonly currency?: string;
    } & Span)
  | ({ readonly kind: 'name'; readonly name: string } & Span)
  | ({ readonly kind: 'negate'; readonly of: Expression } & Span)
  | ({
      readonly kind: 'binary';
      readonly operator: '+' | '-' | '*' | '/';
      readonly left: Expression;
      readonly right: Expression;
    } & Span);

type Span = { readonly from: number; readonly to: number };

/** A value in the plan: its text as typed, its tree, and its place. Evaluated only inside compute. */
export type Quantity<D extends Dimension = Dimension> = {
  readonly dimension: D;
  readonly text: string;
  readonly tree: Expression;
  /** dotted path in the plan, chapter first; a key of the plan's spots */
  readonly at: string;
};

/** A number with what it measures, in the core's unit of that dimension. */
export type Amount = { readonly value: number; readonly dimension: Dimension; readonly currency?: string };

/** Names an expression may use, each with its amount: `side`, `frame.thickness`. */
export type Scope = Readonly<Record<string, Amount>>;
