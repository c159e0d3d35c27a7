/** The rules of axe, put to a page as it stands. */
import axe from 'axe-core';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

const RULES: RunOptions = {
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
};

/** All that the colours can break, where the same page has been looked at in other colours before. */
export const COLOUR_RULES: RunOptions = {
  runOnly: { type: 'rule', values: ['color-contrast', 'link-in-text-block'] },
};

/** All that colours and a narrow page can break. */
export const HAND_RULES: RunOptions = {
  runOnly: { type: 'rule', values: ['color-contrast', 'link-in-text-block', 'target-size'] },
};

export async function faults(page: Page, rules = RULES): Promise<string[]> {
  // The policy refuses a script tag, so the rules come in through the debugger.
  await page.evaluate(axe.source);
  const found = await page.evaluate(
    (asked) =>
      (window as unknown as { axe: { run: (rules: RunOptions) => Promise<AxeResults> } }).axe.run(asked),
    rules,
  );
  return found.violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`,
  );
}
