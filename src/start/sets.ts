import type { Kind, Rule } from '../model/programme.ts';

/**
 * Rules for trees with so many copies of a gene: none asks for more than there can be.
 * @param sets copies that a tree of the kind can carry
 */
export const rulesFor = (rules: readonly Rule[], sets: number): Rule[] =>
  rules.map(({ needs, ...rule }) => ({
    ...rule,
    needs:
      needs.needs === 'total'
        ? { ...needs, copies: Math.min(needs.copies, sets * needs.genes.length) }
        : { ...needs, of: needs.of.map((one) => ({ ...one, copies: Math.min(one.copies, sets) })) },
  }));

/** Kinds whose sets are taken two by two: crossed with another kind, halves of unlike numbers would not add up for the ways back. */
export const twoByTwo = (kinds: readonly Kind[]): Kind[] => kinds.map((kind) => ({ ...kind, inheritance: 'disomic' }));
