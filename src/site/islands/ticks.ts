import { keep, kept } from './kept.ts';

/** What was ticked, each with the mark of its content at that time. */
type Ticks = Record<string, string>;

function nameOf(notebook: string): string {
  return `fettlebook.ticks.${notebook}`;
}

function ticksOf(notebook: string): Ticks {
  try {
    const read: unknown = JSON.parse(kept(nameOf(notebook)) ?? '{}');
    if (typeof read !== 'object' || read === null) return {};
    return Object.fromEntries(Object.entries(read).filter(([, mark]) => typeof mark === 'string'));
  } catch {
    return {};
  }
}

/** A tick holds only for the content it was made on; one made on older content is told and taken off. */
function restore(box: HTMLInputElement, ticks: Ticks): void {
  const mark = ticks[box.dataset.tick ?? ''];
  box.checked = mark !== undefined && mark === box.dataset.mark;
  const changed = box.parentElement?.querySelector<HTMLElement>('.tick-changed');
  if (changed) changed.hidden = mark === undefined || mark === box.dataset.mark;
}

function remember(box: HTMLInputElement, notebook: string): void {
  const { mark, tick } = box.dataset;
  if (tick === undefined || mark === undefined) return;
  const others = Object.entries(ticksOf(notebook)).filter(([id]) => id !== tick);
  const ticks = Object.fromEntries(box.checked ? [...others, [tick, mark]] : others);
  keep(nameOf(notebook), JSON.stringify(ticks));
  restore(box, ticks);
}

function save(notebook: string): void {
  const file = new Blob([`${JSON.stringify({ notebook, ticks: ticksOf(notebook) }, null, 2)}\n`], {
    type: 'application/json',
  });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = `${notebook}-ticks.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** Tick boxes that outlive the visit, and a file of them. */
export function startTicks(): void {
  const notebook = document.body.dataset.notebook;
  if (notebook === undefined) return;
  const boxes = [...document.querySelectorAll<HTMLInputElement>('input[data-tick]')];
  const restoreAll = () => {
    const ticks = ticksOf(notebook);
    for (const box of boxes) restore(box, ticks);
  };
  for (const box of boxes) box.addEventListener('change', () => remember(box, notebook));
  for (const button of document.querySelectorAll<HTMLElement>('[data-save-ticks]')) {
    if (button.parentElement) button.parentElement.hidden = false;
    button.addEventListener('click', () => save(notebook));
  }
  addEventListener('storage', ({ key }) => key === nameOf(notebook) && restoreAll());
  restoreAll();
}
