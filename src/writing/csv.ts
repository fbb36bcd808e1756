/** A spreadsheet would run a cell that begins with one of these. */
const runs = /^[=+\-@\t\r]/;

/** One cell by RFC 4180, 2: quoted where it must be, a quote doubled; a quote (') before what a spreadsheet would run. */
function cell(value: string | number): string {
  const text = typeof value === 'number' ? String(value) : runs.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Rows as text by RFC 4180: comma, CR LF after every row. Numbers are written with a point. */
export function csv(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}
