/** What the browser keeps under a name; null when it keeps nothing. */
export function kept(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

/** Keeps a text under a name, where the browser lets us. */
export function keep(name: string, text: string): void {
  try {
    localStorage.setItem(name, text);
  } catch {
    // Private windows keep nothing; the page still works.
  }
}
