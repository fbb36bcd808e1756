const base: string = import.meta.env?.BASE_URL ?? '/';

/** Address of a page or file of this site, under whatever folder it is served from. */
export function at(...steps: readonly string[]): string {
  return `${base.replace(/\/$/, '')}/${steps.map((step) => `${step}/`).join('')}`;
}

/** Address of a file rather than a page. */
export function fileAt(...steps: readonly string[]): string {
  return at(...steps).replace(/\/$/, '');
}

/** The id of a step on its chapter's page. */
export function stepAnchor(id: string): string {
  return `step-${id.slice(id.indexOf('.') + 1)}`;
}
