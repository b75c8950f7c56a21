import { html } from 'lit';
import { describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import { CompatibilityElement } from '../../../src/components/compatibility/compatibility.ts';
import type { Programme } from '../../../src/model/programme.ts';
import { breaches, everything, mount, settled } from '../fields/mount.ts';
import { samplePear } from '../fields/sample.ts';

/** Cherries under invented names, with genotypes as in East & Mangelsdorf’s scheme: full, half, none; S4' lost its pollen side. */
function cherries(alleles: readonly (string | undefined)[]): Programme {
  const programme = samplePear();
  const [first] = programme.trees;
  return {
    ...programme,
    kinds: programme.kinds.map((kind) => ({ ...kind, pollenRejection: 'gametophytic' })),
    incompatibility: { halfSet: 1, alleles: [{ name: "S4'", like: 'S4', pollenWorks: false, styleWorks: true }] },
    trees: alleles.map((s, i) => ({ ...first!, id: `t${String(i)}`, name: `Tree ${String(i + 1)}`, ...(s === undefined ? {} : { s }) })),
  };
}

async function open(programme: Programme, width: number): Promise<CompatibilityElement> {
  await page.viewport(width, 900);
  const element = Object.assign(new CompatibilityElement(), { programme });
  await mount(html`${element}`);
  await settled();
  return element;
}

const cells = (element: CompatibilityElement): string[][] =>
  [...element.renderRoot.querySelectorAll('tbody tr')].map((row) =>
    [...row.querySelectorAll('td')].map((cell) =>
      cell.textContent
        .trim()
        .replace(/^[✓◐✕]/u, '')
        .trim(),
    ),
  );

describe('oo-compatibility', () => {
  it('says who sets with whom, way round by way round', async () => {
    const element = await open(cherries(['S1S3', 'S3S4', 'S1S3', "S3S4'", undefined]), 1100);
    expect(cells(element)).toEqual([
      ['none', 'half', 'none', 'half', 'full?'],
      ['half', 'none', 'half', 'half', 'full?'],
      ['none', 'half', 'none', 'half', 'full?'],
      ['half', 'none', 'half', 'half', 'full?'],
      ['full?', 'full?', 'full?', 'full?', 'none'],
    ]);
    expect(element.renderRoot.querySelector('.said')?.textContent).toMatch(
      /^By their S alleles, of 20 pairs eight set in full, nine set where part of the pollen works and three set no fruit\.$/u,
    );
    expect(await breaches(element)).toEqual([]);
  });

  it.each([320, 390, 1440])('fits %i px and can be read there', async (width) => {
    const element = await open(cherries(['S1S3', 'S3S4', "S3S4'", 'S1S6', 'S6S13', 'S4S?']), width);
    const { right } = element.getBoundingClientRect();
    for (const each of everything(element.renderRoot)) {
      const box = each.getBoundingClientRect();
      if (box.width > 0) expect(box.right, each.outerHTML).toBeLessThanOrEqual(right + 0.5);
    }
    const shown = [...element.renderRoot.querySelectorAll('table, ul')].filter((each) => each.getBoundingClientRect().width > 0);
    expect(shown.map(({ localName }) => localName)).toEqual([width < 700 ? 'ul' : 'table']);
    expect(await breaches(element)).toEqual([]);
  });

  it('is nothing where no S allele is stated', async () => {
    expect((await open(cherries([undefined, undefined]), 1100)).renderRoot.querySelector('section')).toBeNull();
  });
});
