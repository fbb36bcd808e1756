/** Opens every fold about the element that the address names. */
function openTo(hash: string): void {
  const target = hash.length > 1 ? document.getElementById(decodeURIComponent(hash.slice(1))) : null;
  let fold = target?.closest<HTMLDetailsElement>('details.fold') ?? null;
  if (fold === null) return;
  while (fold !== null) {
    fold.open = true;
    fold = fold.parentElement?.closest<HTMLDetailsElement>('details.fold') ?? null;
  }
  target?.scrollIntoView();
}

/** Folds open for what the address names, and all of them while the page is printed. */
export function startFolds(): void {
  openTo(location.hash);
  addEventListener('hashchange', () => openTo(location.hash));
  let opened: readonly HTMLDetailsElement[] = [];
  addEventListener('beforeprint', () => {
    opened = [...document.querySelectorAll<HTMLDetailsElement>('details.fold:not([open])')];
    for (const fold of opened) fold.open = true;
  });
  addEventListener('afterprint', () => {
    for (const fold of opened) fold.open = false;
  });
}
