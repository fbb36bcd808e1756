/** A word an author can put into prose to place what was computed. `:` stands in a line, `::` alone, `:::` round a block. */
export type Directive = {
  readonly name: string;
  readonly form: 'text' | 'leaf' | 'container';
  /** attributes in braces; a required one has no default */
  readonly attributes: readonly { readonly name: string; readonly required: boolean }[];
  /** what stands in square brackets */
  readonly label: 'required' | 'optional' | 'none';
  readonly example: string;
};

const required = (name: string) => ({ name, required: true });
const optional = (name: string) => ({ name, required: false });

/** Tables of what the rooms computed: benchwork, track, wiring and scenery, in this order. */
const ROOM_TABLES = [
  'hardware',
  ...['lines', 'set-out', 'turnouts', 'track-lengths', 'radii'],
  ...['wires', 'districts', 'reversing', 'holes', 'tests'],
  ...['layers', 'water', 'structures', 'cover', 'requests'],
] as const;

/** The whole vocabulary; everything else with a colon is ordinary text. */
export const DIRECTIVES: readonly Directive[] = [
  { name: 'value', form: 'text', attributes: [], label: 'required', example: ':value[side]' },
  {
    name: 'drawing',
    form: 'leaf',
    attributes: [required('of')],
    label: 'none',
    example: '::drawing{of=benchwork.plan}',
  },
  { name: 'cut-list', form: 'leaf', attributes: [], label: 'none', example: '::cut-list' },
  { name: 'steps', form: 'leaf', attributes: [], label: 'none', example: '::steps' },
  { name: 'findings', form: 'leaf', attributes: [], label: 'none', example: '::findings' },
  { name: 'parts', form: 'leaf', attributes: [], label: 'none', example: '::parts' },
  { name: 'sheets', form: 'leaf', attributes: [], label: 'none', example: '::sheets' },
  { name: 'joints', form: 'leaf', attributes: [], label: 'none', example: '::joints' },
  { name: 'tools', form: 'leaf', attributes: [], label: 'none', example: '::tools' },
  ...ROOM_TABLES.map((name) => ({ name, form: 'leaf', attributes: [], label: 'none', example: `::${name}` }) as const),
  {
    name: 'photo',
    form: 'leaf',
    attributes: [required('file'), optional('alt')],
    label: 'required',
    example: '::photo[what is to be seen]{file=wall.jpg}',
  },
  { name: 'note', form: 'container', attributes: [optional('title')], label: 'optional', example: ':::note ... :::' },
];

export function directiveNamed(name: string): Directive | undefined {
  return DIRECTIVES.find((directive) => directive.name === name);
}
