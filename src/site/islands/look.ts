const SMALLEST = 1;
const LARGEST = 12;

type Look = { readonly dialog: HTMLDialogElement; readonly stage: HTMLElement; size: number };

function button(words: string, name: string, press: () => void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = words;
  made.setAttribute('aria-label', name);
  made.addEventListener('click', press);
  return made;
}

/** Enlarges about a point of the stage, so that what is looked at stays where it is. */
function enlarge(look: Look, factor: number, at: { readonly x: number; readonly y: number }): void {
  const size = Math.min(LARGEST, Math.max(SMALLEST, look.size * factor));
  const by = size / look.size;
  look.size = size;
  const view = look.stage.firstElementChild;
  if (view instanceof HTMLElement) view.style.width = `${size * 100}%`;
  look.stage.scrollLeft = (look.stage.scrollLeft + at.x) * by - at.x;
  look.stage.scrollTop = (look.stage.scrollTop + at.y) * by - at.y;
}

function middle(look: Look) {
  return { x: look.stage.clientWidth / 2, y: look.stage.clientHeight / 2 };
}

function byKey(look: Look, event: KeyboardEvent): void {
  if (event.key === '+' || event.key === '=') enlarge(look, 1.5, middle(look));
  else if (event.key === '-') enlarge(look, 1 / 1.5, middle(look));
  else if (event.key === '0') enlarge(look, 0, middle(look));
  else return;
  event.preventDefault();
}

/** Two fingers apart or together; one finger scrolls as everywhere. */
function byPinch(look: Look): void {
  let apart = 0;
  look.stage.addEventListener(
    'touchmove',
    (event) => {
      const [a, b] = [event.touches[0], event.touches[1]];
      if (a === undefined || b === undefined) return;
      event.preventDefault();
      const now = Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
      const box = look.stage.getBoundingClientRect();
      const at = { x: (a.clientX + b.clientX) / 2 - box.left, y: (a.clientY + b.clientY) / 2 - box.top };
      if (apart > 0) enlarge(look, now / apart, at);
      apart = now;
    },
    { passive: false },
  );
  look.stage.addEventListener('touchend', () => {
    apart = 0;
  });
}

function makeLook(): Look {
  const dialog = document.createElement('dialog');
  const stage = document.createElement('div');
  const bar = document.createElement('div');
  const look: Look = { dialog, stage, size: 1 };
  dialog.className = 'look';
  dialog.setAttribute('aria-label', 'Drawing, enlarged');
  bar.className = 'look-bar';
  stage.className = 'look-stage';
  stage.tabIndex = 0;
  stage.setAttribute('role', 'group');
  stage.setAttribute('aria-label', 'Drawing; arrow keys move it, plus and minus enlarge and reduce it');
  const close = button('Close', 'Close', () => dialog.close());
  close.classList.add('look-close');
  bar.append(
    button('+', 'Enlarge', () => enlarge(look, 1.5, middle(look))),
    button('−', 'Reduce', () => enlarge(look, 1 / 1.5, middle(look))),
    button('Whole', 'Show the whole drawing', () => enlarge(look, 0, middle(look))),
    close,
  );
  dialog.append(bar, stage);
  dialog.addEventListener('keydown', (event) => byKey(look, event));
  dialog.addEventListener('close', () => stage.replaceChildren());
  byPinch(look);
  document.body.append(dialog);
  return look;
}

/** Two drawings with the same ids may not stand on one page: the copy gets its own. */
function copyOf(figure: Element): HTMLElement {
  const view = document.createElement('div');
  view.className = 'drawing-view';
  for (const svg of figure.querySelectorAll('.drawing-view svg')) {
    if (svg.getClientRects().length > 0) view.append(svg.cloneNode(true));
  }
  for (const named of view.querySelectorAll('[id]')) named.id = `look-${named.id}`;
  for (const pointing of view.querySelectorAll('[aria-labelledby]')) {
    const ids = (pointing.getAttribute('aria-labelledby') ?? '').split(' ');
    pointing.setAttribute('aria-labelledby', ids.map((id) => `look-${id}`).join(' '));
  }
  return view;
}

/** A drawing fills the screen when its link, or the drawing itself, is pressed. */
export function startLook(): void {
  let look: Look | null = null;
  document.addEventListener('click', (event) => {
    if (!(event.target instanceof Element) || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const figure = event.target.closest('[data-zoom], .drawing-view')?.closest('.drawing-figure');
    if (!figure) return;
    event.preventDefault();
    look ??= makeLook();
    look.stage.replaceChildren(copyOf(figure));
    look.dialog.showModal();
    look.stage.focus();
    // A sheet is wider than a phone: begin where its figures can be read.
    enlarge(look, 0, middle(look));
    if (look.stage.clientWidth < 700) enlarge(look, 2, { x: 0, y: 0 });
  });
}
