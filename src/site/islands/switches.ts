import { keep } from './kept.ts';

const page = document.documentElement;

function showPressed(selector: string, key: 'setUnit' | 'setTheme', value: string | undefined): void {
  for (const button of document.querySelectorAll<HTMLElement>(selector)) {
    button.setAttribute('aria-pressed', String(button.dataset[key] === value));
  }
}

function currentTheme(): string {
  return page.dataset.theme ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light');
}

function refresh(): void {
  showPressed('[data-set-unit]', 'setUnit', page.dataset.unit);
  showPressed('[data-set-theme]', 'setTheme', currentTheme());
}

/** The reader's switches for units and brightness; both are remembered. */
export function startSwitches(): void {
  for (const group of document.querySelectorAll<HTMLElement>('.switches')) group.hidden = false;
  document.addEventListener('click', ({ target }) => {
    if (!(target instanceof HTMLElement)) return;
    const { setTheme, setUnit } = target.dataset;
    if (setUnit !== undefined) page.dataset.unit = setUnit;
    if (setTheme !== undefined) page.dataset.theme = setTheme;
    if (setUnit !== undefined) keep('fettlebook.unit', setUnit);
    if (setTheme !== undefined) keep('fettlebook.theme', setTheme);
    refresh();
  });
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', refresh);
  refresh();
}
