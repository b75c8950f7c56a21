import { html } from 'lit';
import { describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import pear from '../../../sims/examples/red-pear.json';
import { TrayElement } from '../../../src/components/tray/tray.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import { breaches, choose, everything, find, mount, settled } from '../fields/mount.ts';

const redPear = (): Programme => programmeSchema.parse(pear);

async function open(programme: Programme, changes: Partial<Pick<TrayElement, 'mother' | 'father' | 'trait'>> = {}, width = 1100): Promise<TrayElement> {
  await page.viewport(width, 900);
  const tray = Object.assign(new TrayElement(), changes, { programme });
  await mount(html`${tray}`);
  await document.fonts.ready;
  await settled();
  return tray;
}

const box = (tray: TrayElement, name: string): HTMLSelectElement => find(tray.renderRoot, HTMLSelectElement, `select[name='${name}']`);
const words = (tray: TrayElement, selector = '.answer'): string =>
  find(tray.renderRoot, HTMLElement, selector)
    .textContent.replaceAll(/[\u00a0\s]+/gu, ' ')
    .trim();
const plants = (tray: TrayElement, within = '.tray-picture'): string[] =>
  [...tray.renderRoot.querySelectorAll(`${within} .plant`)].map((plant) => plant.getAttribute('data-kind') ?? '');

/** Red pear with one rule and both parents’ genes stated: one copy by one copy, two needed. */
function known(changes: Partial<Programme> = {}): Programme {
  const programme = redPear();
  const [trait] = programme.traits;
  if (trait?.type !== 'shown') throw new Error('the first trait is shown or not');
  return {
    ...programme,
    traits: [{ ...trait, canShow: 1, rules: trait.rules.slice(2) }],
    trees: programme.trees.map((tree) => ({ ...tree, genes: { red: { copies: 1 } }, seen: {} })),
    ...changes,
  };
}

describe('oo-tray', () => {
  it.each([
    ['as it opens', {}],
    ['its own pollen', { mother: 'old-hedgerow', father: 'old-hedgerow' }],
    ['weak seedlings', { mother: 'old-hedgerow', father: 'mill-quince' }],
    ['no entry', { mother: 'mill-quince', father: 'old-hedgerow' }],
  ])('has no breach of WCAG 2.2 AA: %s', async (_, pair) => {
    const tray = await open(redPear(), pair);
    tray.renderRoot.querySelector('details')?.setAttribute('open', '');
    expect(await breaches(tray)).toEqual([]);
    document.documentElement.dataset['theme'] = 'dark';
    expect(await breaches(tray)).toEqual([]);
    delete document.documentElement.dataset['theme'];
  });

  it('says it in a sentence first: a selfed recessive, ¼, one of them in 11 (1 − ¾¹¹ ≥ 0.95; Sedcole 1977)', async () => {
    const tray = await open(known());
    expect(words(tray)).toBe(
      'Of twenty seedlings of Old Hedgerow × Saffron Bell five would be able to show red flesh. For at least one of them 95 times in 100 raise 11.',
    );
    expect(find(tray.renderRoot, HTMLElement, '.answer').compareDocumentPosition(find(tray.renderRoot, HTMLElement, '.tray-picture'))).toBe(
      Node.DOCUMENT_POSITION_FOLLOWING,
    );
    expect(plants(tray).join(' ')).toBe(
      [...Array<string>(5).fill('able'), ...Array<string>(10).fill('carrier'), ...Array<string>(5).fill('without')].join(' '),
    );
    expect(find(tray.renderRoot, HTMLElement, '.tray-picture').getAttribute('aria-label')).toMatch(/5 able to show it, 10 has some of the copies/u);
    // One rule only: no second tray under it, and nothing is said to be unknown.
    expect(tray.renderRoot.querySelector('.rules')).toBeNull();
    expect(words(tray, '.note.exact')).not.toContain('not all known');
  });

  it('draws twenty under each rule, and their counts as the key has them', async () => {
    const tray = await open(redPear());
    expect(plants(tray)).toHaveLength(20);
    expect([...tray.renderRoot.querySelectorAll('.strip')].map((strip) => strip.querySelectorAll('.plant').length)).toEqual([20, 20, 20]);
    const key = [...tray.renderRoot.querySelectorAll('.key .of')].map((count) => Number.parseInt(count.textContent, 10));
    expect(key.reduce((sum, count) => sum + count, 0)).toBe(20);
    expect(key).toEqual(['able', 'unable', 'carrier', 'without'].map((kind) => plants(tray).filter((one) => one === kind).length));
    expect(tray.renderRoot.querySelectorAll('.tray-picture .pot.wanted')).toHaveLength(key[0]!);
  });

  it('says in words what cannot be reached', async () => {
    const tray = await open(redPear());
    expect(words(tray)).toMatch(/80 times in 100 raise \d+\. 95 times in 100 is out of reach: in 18 of 100 cases this pair can give none/u);
    const never = await open(known({ trees: redPear().trees.map((tree) => ({ ...tree, genes: {}, seen: {} })) }));
    expect(words(never)).toContain('none would be able to show red flesh. Nor would any of a thousand');
    expect(never.renderRoot.querySelector('.need-picture')).toBeNull();
  });

  it('follows the boxes', async () => {
    const tray = await open(known());
    choose(box(tray, 'least'), '3');
    await settled();
    expect(words(tray)).toContain('For at least three of them');
    choose(box(tray, 'wanted'), 'carries');
    await settled();
    expect(words(tray)).toContain('15 would carry at least one copy that counts for red flesh');
    expect(tray.renderRoot.querySelectorAll('.pot.wanted')).toHaveLength(15);
    choose(box(tray, 'father'), 'old-hedgerow');
    await settled();
    expect(words(tray)).toContain('Old Hedgerow, selfed,');
    choose(box(tray, 'mother'), 'mill-quince');
    await settled();
    expect(words(tray)).toBe('There is no cross entry for quince pollinated by pear. Add one under “Crosses between kinds”, and the tray is drawn.');
    expect(tray.renderRoot.querySelector('svg')).toBeNull();
    choose(box(tray, 'mother'), 'saffron-bell');
    await settled();
    expect(plants(tray)).toHaveLength(20);
  });

  it('is worked by the keyboard alone', async () => {
    const tray = await open(known());
    for (const name of ['mother', 'father', 'trait', 'least']) {
      await userEvent.tab();
      expect((tray.renderRoot as ShadowRoot).activeElement).toBe(box(tray, name));
    }
    await userEvent.keyboard('four');
    await settled();
    expect(box(tray, 'least').value).toBe('4');
    expect(words(tray)).toContain('at least four');
  });

  it('keeps a choice while the programme changes, and finds another where it is gone', async () => {
    const tray = await open(redPear(), { father: 'mill-quince' });
    const programme = redPear();
    tray.programme = { ...programme, title: 'Another' };
    await settled();
    expect(box(tray, 'father').value).toBe('mill-quince');
    tray.programme = { ...programme, trees: programme.trees.slice(0, 2) };
    await settled();
    expect(box(tray, 'father').value).toBe('saffron-bell');
    expect(words(tray)).toContain('Old Hedgerow × Saffron Bell');
  });

  it('with measured traits only: no tray, but the family’s hill', async () => {
    const programme = redPear();
    const tray = await open({ ...programme, traits: programme.traits.slice(1), trees: programme.trees.map((tree) => ({ ...tree, seen: {} })) });
    expect(words(tray)).toMatch(/^No trait of this programme is shown or not shown/u);
    expect(tray.renderRoot.querySelector('.tray-picture')).toBeNull();
    expect(words(tray, '.value')).toContain('average 8.5 weeks');
  });

  it('names first fruit, weak and empty ones of the cross entry', async () => {
    const tray = await open(redPear(), { father: 'mill-quince' });
    // Pollinated in 2027, up in 2028; earliest in season 4, half by 5, nine in ten by 7 (the example’s own numbers).
    expect(words(tray, 'dl')).toContain('Pollinated in 2027: the earliest in 2032, half by 2033, nine in ten by 2035');
    expect(words(tray, 'dl')).toMatch(/Weak ones About 19 of any twenty/u);
    const pears = await open(redPear());
    expect(words(pears, 'dl')).toContain('10 in 100 fruits hold no sound seed');
    expect(words(pears, 'dl')).not.toContain('Weak');
  });

  it('S alleles: no fruit in a sentence; of half of the pollen what it carries, and what is linked goes with it', async () => {
    const cherries = known({
      kinds: redPear().kinds.map((kind) => ({ ...kind, pollenRejection: 'gametophytic' })),
      incompatibility: { group: 'S', position: 0, halfSet: 1, alleles: [] },
      genes: redPear().genes.map((gene) => (gene.id === 'red' ? { ...gene, group: 'S', position: 0 } : gene)),
      trees: redPear().trees.map((tree, i) => ({ ...tree, s: i === 0 ? 'S1S3' : 'S1S4', genes: { red: { copies: 1, homologue: 'b' } }, seen: {} })),
    });
    const tray = await open(cherries);
    // All pollen that works carries S4 and the gene beside it: half of the seedlings have two copies, the others one.
    expect(words(tray)).toContain('ten would be able to show red flesh');
    expect(plants(tray).filter((one) => one === 'without')).toEqual([]);
    expect(words(tray, 'dl')).toContain('Pollen Half of it works, that with S4. Seedlings: S1S4 50 %, S3S4 50 %. None sets fruit with its own pollen.');
    choose(box(tray, 'father'), 'old-hedgerow');
    await settled();
    expect(words(tray)).toBe('No fruit: by its S alleles Old Hedgerow (S1S3) rejects its own pollen.');
  });

  it('males, copies of the seed parent and what dies have places of their own', async () => {
    const programme = known();
    const tray = await open({
      ...programme,
      kinds: programme.kinds.map((kind) => ({ ...kind, maleShare: 0.5 })),
      crosses: programme.crosses.map((cross) => ({ ...cross, motherClones: 0.2, necrosis: { share: 0.25, months: 6 } })),
    });
    // 20: four copies, of 16 four die, of twelve six are male; of six 1½ : 3 : 1½.
    const count = (kind: string) => plants(tray).filter((one) => one === kind).length;
    expect([count('copy'), count('dies'), count('male'), count('carrier'), count('able') + count('without')]).toEqual([4, 4, 6, 3, 3]);
    expect(words(tray)).toContain('Besides, there would be six males, four copies of Old Hedgerow and four that die whatever they are grafted on.');
    expect(tray.renderRoot.querySelectorAll('.tray-picture .plant[data-kind="dies"] .leaf')).toHaveLength(0);
    expect(words(tray, 'dl')).toContain('20 in 100 seedlings die at about 6 months');
    expect(await breaches(tray)).toEqual([]);
  });

  it('has the figures as a table', async () => {
    const tray = await open(known());
    const cells = [...tray.renderRoot.querySelectorAll('details table:first-of-type tbody td')].map((cell) => cell.textContent.replaceAll('\u00a0', ' '));
    expect(cells.slice(0, 5)).toEqual(['100 %', '25 %', '0 %', '50 %', '25 %']);
  });

  it.each([320, 390, 700, 1024, 1440])('fits %i px: nothing sticks out, boxes of 44 px, no text under 16 px', async (width) => {
    for (const pair of [{}, { father: 'mill-quince' }, { mother: 'saffron-bell', father: 'saffron-bell' }]) {
      const tray = await open(redPear(), pair, width);
      const { right } = tray.getBoundingClientRect();
      expect(right).toBeGreaterThan(200);
      for (const element of everything(tray.renderRoot)) {
        const bounds = element.getBoundingClientRect();
        if (bounds.width === 0 || element.closest('details, option')) continue;
        expect(bounds.right, element.outerHTML).toBeLessThanOrEqual(right + 1);
        if (element.matches('select')) expect(bounds.height).toBeGreaterThanOrEqual(44);
        if (element.textContent.trim() !== '') expect(parseFloat(getComputedStyle(element).fontSize), element.outerHTML).toBeGreaterThanOrEqual(16);
      }
      tray.parentElement?.remove();
    }
  });
});
