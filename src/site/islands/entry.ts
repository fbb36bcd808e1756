import { type EntryDraft, entryName, entryText } from '../../writing/log-entry.ts';
import { keep, kept } from './kept.ts';

type Form = { readonly form: HTMLFormElement; readonly notebook: string };

function nameOf(notebook: string): string {
  return `fettlebook.entry.${notebook}`;
}

function field(form: HTMLFormElement, name: string): HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement | null {
  const found = form.elements.namedItem(name);
  return found instanceof HTMLInputElement || found instanceof HTMLTextAreaElement || found instanceof HTMLSelectElement
    ? found
    : null;
}

function typed(form: HTMLFormElement, name: string): string {
  return field(form, name)?.value.trim() ?? '';
}

function boxes(form: HTMLFormElement, name: string): readonly HTMLInputElement[] {
  return [...form.querySelectorAll<HTMLInputElement>(`input[name="${name}"]`)];
}

function ticked(form: HTMLFormElement, name: string): readonly string[] {
  return boxes(form, name).flatMap((box) => (box.checked ? [box.value] : []));
}

function whole(text: string): number | null {
  const number = Number(text);
  return text !== '' && Number.isInteger(number) && number > 0 ? number : null;
}

/** Today where the reader is, as ISO writes it. */
function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function draftOf(form: HTMLFormElement): EntryDraft {
  const amount = typed(form, 'spent').replace(',', '.');
  return {
    date: typed(form, 'date') || today(),
    chapter: typed(form, 'chapter'),
    title: typed(form, 'title'),
    people: whole(typed(form, 'people')),
    minutes: whole(typed(form, 'minutes')),
    done: ticked(form, 'done'),
    made: ticked(form, 'made'),
    spent: /^\d+(?:\.\d{1,2})?$/.test(amount) ? `${amount} ${typed(form, 'currency')}` : null,
    words: typed(form, 'words'),
    hints: [],
  };
}

/** What is on the form outlives the visit: a workshop has no signal, and a phone is put away. */
function remember({ form, notebook }: Form): void {
  const draft = draftOf(form);
  keep(nameOf(notebook), JSON.stringify({ ...draft, spent: typed(form, 'spent') }));
}

function restore({ form, notebook }: Form): void {
  try {
    const read: unknown = JSON.parse(kept(nameOf(notebook)) ?? '{}');
    for (const [name, value] of Object.entries(read ?? {})) {
      const input = field(form, name);
      if (input !== null && input.type !== 'checkbox' && (typeof value === 'string' || typeof value === 'number'))
        input.value = String(value);
      if (Array.isArray(value)) for (const box of boxes(form, name)) box.checked = value.includes(box.value);
    }
  } catch {
    // A text that is no JSON is nobody's entry.
  }
}

/** Steps ticked on their pages, if they still are what was ticked. */
function takeTicks({ form, notebook }: Form): void {
  try {
    const ticks: unknown = JSON.parse(kept(`fettlebook.ticks.${notebook}`) ?? '{}');
    const marks = new Map<string, unknown>(Object.entries(ticks ?? {}));
    for (const box of boxes(form, 'done'))
      if (box.dataset.mark !== undefined && marks.get(`step:${box.value}`) === box.dataset.mark) box.checked = true;
  } catch {
    // The same.
  }
}

function show(form: HTMLFormElement): void {
  const text = form.querySelector('[data-entry-text]');
  if (text !== null) text.textContent = entryText(draftOf(form));
}

function save({ form, notebook }: Form): void {
  const draft = draftOf(form);
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([entryText(draft)], { type: 'text/markdown' }));
  link.download = `${entryName(draft, (form.dataset.taken ?? '').split(' '))}.md`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  const done = form.querySelector<HTMLElement>('[data-entry-saved]');
  if (done !== null) done.textContent = `Saved as ${link.download}. Put it into ${notebook}/log.`;
}

function empty({ form, notebook }: Form): void {
  form.reset();
  keep(nameOf(notebook), '{}');
  const date = field(form, 'date');
  if (date !== null) date.value = today();
  show(form);
}

/** The page that turns ticks, minutes and notes into the file of a log entry. */
export function startEntry(): void {
  const form = document.querySelector<HTMLFormElement>('form[data-entry]');
  const notebook = document.body.dataset.notebook;
  if (form === null || notebook === undefined) return;
  const both: Form = { form, notebook };
  form.hidden = false;
  const date = field(form, 'date');
  if (date !== null) date.value = today();
  restore(both);
  takeTicks(both);
  show(form);
  form.addEventListener('input', () => {
    remember(both);
    show(form);
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    save(both);
  });
  form.querySelector('[data-entry-empty]')?.addEventListener('click', () => empty(both));
}

startEntry();
