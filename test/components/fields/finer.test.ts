import { describe, expect, it } from 'vitest';
import { OoChoices } from '../../../src/components/fields/choices.ts';
import { OoField } from '../../../src/components/fields/field.ts';
import type { Path } from '../../../src/model/walk.ts';
import { boxOf, breaches, choose, Desk, everything, find, problemOf, settled, typeInto } from './mount.ts';

const KIND: Path = ['kinds', 0];
const fold = (desk: Desk): HTMLDetailsElement => find(desk.form.renderRoot, HTMLDetailsElement, '.finer');
const line = (desk: Desk): string => find(fold(desk), HTMLElement, 'summary').textContent.trim();
const has = (desk: Desk, path: Path): boolean => desk.form.renderRoot.querySelector(`[data-path="${path.join('/')}"]`) !== null;

async function unfold(desk: Desk): Promise<Desk> {
  fold(desk).open = true;
  await new Promise((done) => setTimeout(done));
  await settled();
  return desk;
}

/** A desk whose pears have six sets, any with any, and are self-incompatible. */
async function sixSets(path: Path): Promise<Desk> {
  const desk = new Desk(path);
  desk.programme = {
    ...desk.programme,
    kinds: desk.programme.kinds.map((kind) => (kind.id === 'pear' ? { ...kind, ploidy: 6, inheritance: 'polysomic', pollenRejection: 'gametophytic' } : kind)),
  };
  desk.form.programme = desk.programme;
  return desk.open();
}

describe('the finer points of inheritance', () => {
  it.each([
    [KIND, 'Two sets of chromosomes; no pollen rejected by S alleles; no separate sexes', 'ploidy'],
    [['trees', 0], 'Two sets of chromosomes; no test crosses', 's'],
    [['genes', 0], 'Passed on by both parents; no double reduction', 'passes'],
    [['crosses', 0], 'Every seedling of use; none a copy of the seed parent; none that no rootstock saves', 'motherClones'],
  ] as [Path, string, string][])('are folded under a line that says what they come to: %s', async (path, words, key) => {
    const desk = await new Desk(path).open();
    expect(line(desk)).toBe(words);
    expect(has(desk, [...path, key])).toBe(false);
    await unfold(desk);
    expect(has(desk, [...path, key])).toBe(true);
    expect(await breaches(desk.form)).toEqual([]);
  });

  it('fit 320 px', async () => {
    for (const path of [KIND, ['trees', 0], ['genes', 0], ['crosses', 0]] as Path[]) {
      const desk = await unfold(await new Desk(path).open(320));
      const { right } = desk.form.getBoundingClientRect();
      for (const element of everything(fold(desk))) {
        const { width, right: edge } = element.getBoundingClientRect();
        if (width > 0 && !element.closest('.visually-hidden, option')) expect(edge, element.outerHTML).toBeLessThanOrEqual(right + 0.5);
      }
      desk.form.parentElement?.remove();
    }
  });

  it('say what was changed, and start folded at another entry', async () => {
    const desk = await unfold(await new Desk(KIND).open());
    typeInto(boxOf(find(desk.form.renderRoot, OoField, '[data-path="kinds/0/ploidy"]').renderRoot), '4');
    await settled();
    expect(desk.programme.kinds[0]?.ploidy).toBe(4);
    expect(line(desk)).toMatch(/^Four sets of chromosomes, two by two;/u);
    desk.form.path = ['kinds', 1];
    await settled();
    expect(fold(desk).open).toBe(false);
  });

  it('S alleles: what cannot be read is told with its place and not sent; what was read is said', async () => {
    const desk = await unfold(await sixSets(['trees', 0]));
    expect(line(desk)).toBe('Six sets of chromosomes, any pairs with any; self-incompatible by S alleles: not stated; no test crosses');
    const field = find(desk.form.renderRoot, OoField, '[data-path="trees/0/s"]');
    const box = find(field.renderRoot, HTMLInputElement, 'input');
    typeInto(box, 'S3T4');
    await settled();
    expect(problemOf(field.renderRoot)).toMatch(/^“T4”, from letter 3, is no S allele\. Write S and the name of each/u);
    expect(desk.edits).toEqual([]);
    typeInto(box, "S3S4'S?");
    await settled();
    expect(problemOf(field.renderRoot)).toBe('');
    expect(find(field.renderRoot, HTMLElement, '#understood').textContent).toBe("Read as S3, S4' and one not known.");
    expect(desk.programme.trees[0]?.s).toBe("S3S4'S?");
    expect(line(desk)).toContain("self-incompatible by S alleles: S3S4'S?");
  });

  it('copies of a gene: as many as the tree has sets', async () => {
    const copies: Path = ['trees', 0, 'genes', 'redness', 'copies'];
    const type = async (desk: Desk): Promise<string> => {
      const field = find(desk.form.renderRoot, OoField, `[data-path="${copies.slice(0, -1).join('/')}"] oo-field`);
      typeInto(boxOf(field.renderRoot), '5');
      await settled();
      return problemOf(field.renderRoot);
    };
    expect(await type(await new Desk(['trees', 0]).open())).toMatch(/^Must lie between 0 and 2/u);
    const six = await sixSets(['trees', 0]);
    expect(await type(six)).toBe('');
    expect(six.programme.trees[0]?.genes['redness']).toEqual({ copies: 5 });
  });

  it('fathers by their daughters, and males kept, are offered where a kind has separate sexes', async () => {
    const at: Path = ['plans', 0, 'generations', 1, 'pollen'];
    const plain = await new Desk(['plans', 0, 'generations', 1]).open();
    const options = (desk: Desk): string[] =>
      [...find(find(desk.form.renderRoot, OoChoices, `[data-path="${at.join('/')}"]`).renderRoot, HTMLSelectElement, 'select').options].map(
        ({ value }) => value,
      );
    expect(options(plain)).toContain('tree saffron');
    expect(options(plain)).not.toContain('sires g1');
    expect(has(plain, ['plans', 0, 'generations', 1, 'keep', 'males'])).toBe(false);
    plain.put(['kinds', 2, 'maleShare'], 0.5);
    await settled();
    const choices = find(plain.form.renderRoot, OoChoices, `[data-path="${at.join('/')}"]`);
    choose(find(choices.renderRoot, HTMLSelectElement, 'select'), 'sires g1');
    await settled();
    expect(plain.programme.plans[0]?.generations[1]?.pollen).toEqual([{ sires: 'g1', best: 1 }]);
    typeInto(boxOf(find(choices.renderRoot, OoField, '.best').renderRoot), '3');
    await settled();
    expect(plain.programme.plans[0]?.generations[1]?.pollen).toEqual([{ sires: 'g1', best: 3 }]);
    expect(has(plain, ['plans', 0, 'generations', 1, 'keep', 'males'])).toBe(true);
    expect(await breaches(plain.form)).toEqual([]);
  });
});
