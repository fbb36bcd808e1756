import axe from 'axe-core';
import type { Page } from 'playwright-core';

const STANDARDS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

type Violation = {
  readonly id: string;
  readonly nodes: readonly { readonly target: unknown; readonly failureSummary?: string }[];
};

/** What axe finds wrong on the page as it is shown; `only` narrows it to some rules. */
export async function violations(page: Page, only: readonly string[] = []): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const options = {
    resultTypes: ['violations'],
    runOnly: only.length > 0 ? { type: 'rule', values: only } : { type: 'tag', values: STANDARDS },
    ...(only.length > 0 ? {} : { rules: { 'target-size': { enabled: true } } }),
  };
  const found: readonly Violation[] = await page.evaluate(async (given) => {
    const tool = (window as unknown as { axe: { run(node: Document, options: unknown): Promise<{ violations: [] }> } })
      .axe;
    return (await tool.run(document, given)).violations;
  }, options);
  return found.map(
    ({ id, nodes }) =>
      `${id}: ${nodes
        .slice(0, 3)
        .map((node) => `${node.target} ${node.failureSummary ?? ''}`)
        .join(' | ')}`,
  );
}

/** How far the page is wider than the screen, px. */
export function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Controls and links outside running text that are smaller than 24 by 24 px (WCAG 2.2, 2.5.8). */
export function smallTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const controls = document.querySelectorAll<HTMLElement>(
      'button, input, nav a, figcaption a, td a, .permalink, .home, .drawings a, .states a',
    );
    return [...controls].flatMap((control) => {
      const { height, width } = control.getBoundingClientRect();
      return width > 0 && (height < 24 || width < 24)
        ? [`${control.tagName} ${control.textContent?.trim()} ${width} x ${height}`]
        : [];
    });
  });
}
