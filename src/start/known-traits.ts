import type { CatalogueTrait } from '../catalogue/catalogue.ts';
import { knownRules } from './inheritance.ts';

export type KnownRule = ReturnType<typeof knownRules>[number];

/** Words this short say little of a trait: “of”, “and”. */
const SHORT = 3;
/** As many letters as “resistant” and “resistance”, “flesh” and “fleshed” share. */
const STEM = 5;
const stems = (text: string): readonly string[] =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word.length >= SHORT)
    .map((word) => word.slice(0, STEM));

/**
 * Traits that the catalogue knows in a kind and that a breeder’s words may mean: every word of the one is in the other. A guess that
 * the breeder confirms.
 * @param kind id of a kind of the catalogue; one that it has not has no traits
 * @param words as typed
 */
export function meantBy(kind: string, words: string): readonly KnownRule[] {
  const said = stems(words);
  if (said.length === 0) return [];
  return knownRules(kind).filter(({ trait }) => {
    const named = stems(trait.name);
    return said.every((word) => named.includes(word)) || named.every((word) => said.includes(word));
  });
}

/** How a trait is inherited, as far as a breeder need know: one parent is enough, both must bring it, or it is less simple. */
export function plainRule({ trait }: CatalogueTrait): 'one' | 'two' | 'less simple' {
  if (trait.type === 'measured') return 'less simple';
  const [rule, ...others] = trait.rules;
  if (rule?.needs.needs !== 'all' || others.length > 0) return 'less simple';
  const [gene, ...more] = rule.needs.of;
  if (gene === undefined || more.length > 0) return 'less simple';
  return gene.copies === 1 ? 'one' : 'two';
}
