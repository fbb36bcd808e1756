/** One kind of work in one step, as its author or the model names it, and the instances it is done to. */
export type Deed = { readonly step: string; readonly noun: string; readonly makes: readonly string[] };
