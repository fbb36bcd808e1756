import axe from 'axe-core';
import type { Locator, Page } from 'playwright-core';

const STANDARDS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

type Violation = {
  readonly id: string;
  readonly nodes: readonly { readonly target: unknown; readonly failureSummary?: string }[];
};

/** What to look at: all rules of the standards or some, with the insides of drawings or without. */
type Look = { readonly rules?: readonly string[]; readonly drawings?: 'inside' };

/** What axe finds wrong on the page as it is shown. */
export async function violations(page: Page, { drawings, rules = [] }: Look = {}): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const options = {
    resultTypes: ['violations'],
    runOnly: rules.length > 0 ? { type: 'rule', values: rules } : { type: 'tag', values: STANDARDS },
    ...(rules.length > 0 ? {} : { rules: { 'target-size': { enabled: true } } }),
  };
  const found: readonly Violation[] = await page.evaluate(
    async ([options, exclude]) => {
      const tool = (
        window as unknown as { axe: { run(context: unknown, options: unknown): Promise<{ violations: [] }> } }
      ).axe;
      return (await tool.run({ include: [['html']], exclude }, options)).violations;
    },
    [options, drawings === 'inside' ? [] : [['svg.drawing > *']]] as const,
  );
  return found.map(
    ({ id, nodes }) =>
      `${id}: ${nodes
        .slice(0, 3)
        .map((node) => `${node.target} ${node.failureSummary ?? ''}`)
        .join(' | ')}`,
  );
}

/** The words a reader sees: not those of the unit that is not shown. */
export function shownText(place: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: textContent also holds what is hidden
  return place.innerText();
}

/** How far the page is wider than the screen, px. */
export function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Tables and drawings that are wider than the room they stand in, so that they have to be slid sideways. */
export function sliding(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.scrolls, .drawing-view')]
      .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth + 1)
      .map((one) => `${one.ariaLabel ?? one.className} is ${one.scrollWidth - one.clientWidth} px too wide`),
  );
}

/**
 * Controls and links outside running text that are smaller than 24 by 24 px, and links of the text that are lower
 * (WCAG 2.2, 2.5.8; it lets those of a sentence be, and a finger is glad of more).
 */
export function smallTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const controls = document.querySelectorAll<HTMLElement>(
      'button, input, nav a, figcaption a, td a, .permalink, .home, .drawings a, .states a',
    );
    const alone = new Set<Element>(controls);
    const all = new Set([...controls, ...document.querySelectorAll('main a, .foot a')]);
    return [...all].flatMap((control) => {
      const [{ height, width } = { height: 0, width: 0 }] = control.getClientRects();
      return width > 0 && (height < 24 || (width < 24 && alone.has(control)))
        ? [`${control.tagName} ${control.textContent?.trim()} ${width} x ${height}`]
        : [];
    });
  });
}
