/** Boxes whose table is wider than they are say so; without JavaScript the table is still reached by sliding. */
export function startScrolls(): void {
  const tell = ({ target }: { readonly target: Element }) =>
    target.classList.toggle('goes-on', target.scrollWidth > target.clientWidth + 1);
  const sizes = new ResizeObserver((entries) => {
    for (const entry of entries) tell(entry);
  });
  for (const box of document.querySelectorAll('.scrolls')) sizes.observe(box);
}
