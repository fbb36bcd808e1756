/** What a new log entry is made of: plain ids and words, before they are a file. */
export type EntryDraft = {
  /** `2026-03-14` */
  readonly date: string;
  readonly chapter: string;
  /** words for the file's name */
  readonly title: string;
  readonly people: number | null;
  readonly minutes: number | null;
  /** ids of steps and of pieces, in full */
  readonly done: readonly string[];
  readonly made: readonly string[];
  /** an amount and its currency: `18.50 EUR` */
  readonly spent: string | null;
  readonly words: string;
  /** lines for the author, written as comments into the front matter */
  readonly hints: readonly string[];
};

/** Longest name of an entry's file without its date. */
const LONGEST = 60;

/** Words as they stand in a file's name: small letters, digits and hyphens; `entry` when nothing is left. */
function fileWords(title: string): string {
  const plain = title.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  const name = plain.replace(/[^a-z0-9]+/g, '-').slice(0, LONGEST);
  return name.replace(/^-+|-+$/g, '') || 'entry';
}

/** The name of an entry's file without its ending; a second one of the same day and words is numbered. */
export function entryName({ date, title }: Pick<EntryDraft, 'date' | 'title'>, taken: readonly string[]): string {
  const name = `${date}-${fileWords(title)}`;
  if (!taken.includes(name)) return name;
  let number = 2;
  while (taken.includes(`${name}-${number}`)) number++;
  return `${name}-${number}`;
}

/** A step of the entry's own chapter goes by its short name. */
function shortStep(id: string, chapter: string): string {
  return id.startsWith(`${chapter}.`) ? id.slice(chapter.length + 1) : id;
}

function list(key: string, ids: readonly string[]): readonly string[] {
  return ids.length === 0 ? [] : [`${key}: [${ids.join(', ')}]`];
}

/** What a file of words may not hold: characters nobody sees, save tabs and ends of lines. */
function visible(words: string): string {
  return [...words.replace(/\r\n?/g, '\n')]
    .filter((letter) => letter === '\n' || letter === '\t' || !/[\p{Cc}\p{Cf}\p{Co}\p{Cs}]/u.test(letter))
    .join('');
}

/** Words as Markdown that says just them: a colon that would begin a block or a value is kept a colon. */
function asProse(words: string): string {
  return visible(words)
    .replace(/:(?=[:A-Za-z])/g, '\\:')
    .replace(/!(?=\[)/g, '\\!')
    .trim();
}

function comments(hints: readonly string[]): readonly string[] {
  return hints.map((hint) => `# ${visible(hint).replace(/\s+/g, ' ').trim()}`);
}

/** The entry as the text of its file. */
export function entryText(draft: EntryDraft): string {
  const { chapter, date, done, hints, made, minutes, people, spent } = draft;
  const front = [
    `date: ${date}`,
    `chapter: ${chapter}`,
    ...(people === null ? [] : [`people: ${people}`]),
    ...(minutes === null ? [] : [`minutes: ${minutes}`]),
    ...list(
      'done',
      done.map((id) => shortStep(id, chapter)),
    ),
    ...list('made', made),
    ...(spent === null ? [] : [`spent: ${spent}`]),
    ...comments(hints),
  ];
  return `---\n${front.join('\n')}\n---\n\n${asProse(draft.words)}\n`;
}
