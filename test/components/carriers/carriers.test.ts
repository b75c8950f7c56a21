import { html } from 'lit';
import { describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import cherry from '../../../sims/examples/cherry-selfing.json';
import kaki from '../../../sims/examples/kaki-sweet.json';
import { Carriers } from '../../../src/components/carriers/carriers.ts';
import { programmeSchema } from '../../../src/model/programme.ts';
import { breaches, mount, settled } from '../fields/mount.ts';

async function open(document: unknown, width = 1100): Promise<Carriers> {
  await page.viewport(width, 900);
  const carriers = Object.assign(new Carriers(), { programme: programmeSchema.parse(document) });
  await mount(html`${carriers}`);
  await settled();
  return carriers;
}
const rows = (carriers: Carriers): string[] =>
  [...carriers.renderRoot.querySelectorAll('tbody tr')].map((row) => (row instanceof HTMLElement ? row.innerText : '').replaceAll(/[\u00a0\s]+/gu, ' ').trim());

describe('oo-carriers', () => {
  it('has no breach of WCAG 2.2 AA, wide and narrow, and says chance, what was seen and the next step', async () => {
    for (const width of [1100, 390]) {
      const carriers = await open(kaki, width);
      expect(await breaches(carriers)).toEqual([]);
      expect(carriers.renderRoot.querySelectorAll('[role=columnheader]')).toHaveLength(4);
      const [first] = rows(carriers);
      expect(first).toMatch(/^Plum Moon .*9 in 10 .*Test cross: 3 of 14 seedlings showed it.*Cross it with Quiet Lantern or Saltmarsh Gold/u);
      expect(carriers.scrollWidth).toBeLessThanOrEqual(carriers.clientWidth);
    }
  });

  it('takes no room where no tree may hide a trait', async () => {
    const carriers = await open(cherry);
    expect(carriers.hidden).toBe(true);
    expect(carriers.renderRoot.querySelector('section')).toBeNull();
  });
});
