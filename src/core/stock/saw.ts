/** The saw as the author has it, mm; `keep` is the smallest side of an offcut worth keeping. */
export type Saw = { readonly kerf: number; readonly trim: number; readonly keep: number };
