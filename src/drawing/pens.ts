/**
 * The line set: ISO 128 widths with wide to narrow 2:1 (0.5 and 0.25 mm; 0.7 for the sheet's frame and cut edges).
 * Colours are CSS variables; every pen also differs from its neighbours by width or dash.
 */
export type PenName =
  | 'edge'
  | 'feature'
  | 'cut-edge'
  | 'hidden'
  | 'centre'
  | 'phantom'
  | 'dimension'
  | 'hatch'
  | 'dots'
  | 'break'
  | 'frame'
  | 'grid'
  | 'symbol'
  | 'none';

export type Pen = { readonly width: number; readonly dash: readonly number[] };

export const pens: Readonly<Record<PenName, Pen>> = {
  edge: { width: 0.5, dash: [] },
  feature: { width: 0.35, dash: [] },
  'cut-edge': { width: 0.7, dash: [] },
  hidden: { width: 0.25, dash: [2, 1] },
  centre: { width: 0.25, dash: [6, 1, 1, 1] },
  phantom: { width: 0.25, dash: [6, 1, 1, 1, 1, 1] },
  dimension: { width: 0.18, dash: [] },
  hatch: { width: 0.18, dash: [] },
  dots: { width: 0.35, dash: [0.01, 2.5] },
  break: { width: 0.25, dash: [] },
  frame: { width: 0.7, dash: [] },
  grid: { width: 0.35, dash: [] },
  symbol: { width: 0.35, dash: [] },
  none: { width: 0, dash: [] },
};

/** What fills an area: wood is white on paper, `ink` is the line's own colour, `shade` a part beyond or cut away. */
export type FillName = 'none' | 'wood' | 'paper' | 'ink' | 'shade';

const light = {
  paper: '#fffefb',
  wood: '#ffffff',
  ink: '#1d2329',
  quiet: '#4b5660',
  shade: '#eef0ee',
};
const dark = { paper: '#171b1f', wood: '#22282d', ink: '#eef1f2', quiet: '#b4bec6', shade: '#2b3238' };
const print = { paper: '#ffffff', wood: '#ffffff', ink: '#000000', quiet: '#000000', shade: '#ffffff' };

/** Colour sets by name, for the contrast test. */
export const colourSets = { light, dark, print } as const;

function variables(set: typeof light): string {
  return Object.entries(set)
    .map(([name, value]) => `--drawing-${name}: ${value};`)
    .join(' ');
}

const quiet: readonly PenName[] = ['dimension', 'hatch', 'dots', 'hidden', 'centre', 'phantom', 'break'];

function penRules(): string {
  return Object.keys(pens)
    .filter((name) => name !== 'none')
    .map((name) => {
      const colour = quiet.some((pen) => pen === name) ? 'quiet' : 'ink';
      return `.drawing .pen-${name} { stroke: var(--drawing-${colour}, ${light[colour]}); }`;
    })
    .join('\n');
}

/** The stylesheet of every drawing; drawing.css holds the same text for the site, and a downloaded SVG carries it inside. */
export const drawingStyles = `/* Written by make-styles.ts from pens.ts. */
.drawing { ${variables(light)} color-scheme: light dark; }
@media (prefers-color-scheme: dark) { :root:not([data-theme="light"]) .drawing { ${variables(dark)} } }
[data-theme="dark"] .drawing { ${variables(dark)} }
@media print { :root .drawing, :root:not([data-theme="light"]) .drawing { ${variables(print)} } }
.drawing * { fill: none; stroke-linecap: butt; stroke-linejoin: miter; }
.drawing text { fill: var(--drawing-ink, ${light.ink}); font-family: "Atkinson Hyperlegible", sans-serif; font-kerning: none; font-variant-ligatures: none; }
.drawing tspan { fill: inherit; }
.drawing text.quiet { fill: var(--drawing-quiet, ${light.quiet}); }
.drawing .fill-paper { fill: var(--drawing-paper, ${light.paper}); }
.drawing .fill-wood { fill: var(--drawing-wood, ${light.wood}); }
.drawing .fill-shade { fill: var(--drawing-shade, ${light.shade}); }
.drawing .fill-ink { fill: var(--drawing-ink, ${light.ink}); }
.drawing .pen-dots { stroke-linecap: round; }
${penRules()}
`;
