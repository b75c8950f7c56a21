import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright';
import { z } from 'zod';

const AXE = fileURLToPath(new URL('../../node_modules/axe-core/axe.min.js', import.meta.url));
const foundSchema = z.array(z.object({ id: z.string(), nodes: z.array(z.object({ html: z.string(), failureSummary: z.string().optional() })) }));

/**
 * Faults that axe-core finds in the page as it stands, shadow roots included: rule, element, and what is wrong with it.
 * @param rules to look for; all if left out
 */
export async function axeFaults(page: Page, rules?: readonly string[]): Promise<string[]> {
  if (!(await page.evaluate(() => Reflect.has(window, 'axe')))) await page.addScriptTag({ path: AXE });
  const violations: unknown = await page.evaluate(
    `axe.run(document, ${JSON.stringify({ resultTypes: ['violations'], ...(rules ? { runOnly: rules } : {}) })}).then(({ violations }) => violations)`,
  );
  return foundSchema
    .parse(violations)
    .flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary = '' }) => `${id}: ${html.slice(0, 200)} ${failureSummary.replace(/\s+/g, ' ')}`));
}
