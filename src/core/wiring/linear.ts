/** A square matrix, row by row. */
export type Matrix = readonly (readonly number[])[];

/** A matrix as L U with its rows in the order `order`; L below the diagonal (its own is 1), U on and above it. */
export type Factors = { readonly lu: Matrix; readonly order: readonly number[] };

/** A pivot this much smaller than the largest entry means the matrix has no inverse. */
const SINGULAR = 1e-13;

/** LU with the largest pivot of each column (Golub and Van Loan, Matrix Computations, 3.4); null when singular. */
export function factored(matrix: Matrix): Factors | null {
  const n = matrix.length;
  const lu = matrix.map((row) => [...row]);
  const order = lu.map((_, i) => i);
  const largest = lu.reduce((most, row) => row.reduce((m, value) => Math.max(m, Math.abs(value)), most), 0);
  for (let k = 0; k < n; k += 1) {
    const pivot = pivotRow(lu, k);
    swap(lu, k, pivot);
    swap(order, k, pivot);
    const row = lu[k] ?? [];
    const top = row[k] ?? 0;
    if (Math.abs(top) <= SINGULAR * largest) return null;
    for (let i = k + 1; i < n; i += 1) eliminate(lu[i] ?? [], row, k);
  }
  return { lu, order };
}

function pivotRow(lu: readonly (readonly number[])[], k: number): number {
  let best = k;
  for (let i = k + 1; i < lu.length; i += 1) {
    if (Math.abs(lu[i]?.[k] ?? 0) > Math.abs(lu[best]?.[k] ?? 0)) best = i;
  }
  return best;
}

function swap<T>(rows: T[], a: number, b: number): void {
  const [first, second] = [rows[a], rows[b]];
  if (first === undefined || second === undefined) return;
  rows[a] = second;
  rows[b] = first;
}

function eliminate(row: number[], pivot: readonly number[], k: number): void {
  const share = (row[k] ?? 0) / (pivot[k] ?? 1);
  row[k] = share;
  if (share === 0) return;
  for (let j = k + 1; j < row.length; j += 1) row[j] = (row[j] ?? 0) - share * (pivot[j] ?? 0);
}

/** The x with A x = b. */
export function solved({ lu, order }: Factors, b: readonly number[]): readonly number[] {
  const x = order.map((i) => b[i] ?? 0);
  for (let i = 0; i < x.length; i += 1) {
    for (let j = 0; j < i; j += 1) x[i] = (x[i] ?? 0) - (lu[i]?.[j] ?? 0) * (x[j] ?? 0);
  }
  for (let i = x.length - 1; i >= 0; i -= 1) {
    for (let j = i + 1; j < x.length; j += 1) x[i] = (x[i] ?? 0) - (lu[i]?.[j] ?? 0) * (x[j] ?? 0);
    x[i] = (x[i] ?? 0) / (lu[i]?.[i] ?? 1);
  }
  return x;
}
