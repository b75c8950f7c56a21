import { genesOf, type Needs } from '../genetics/family.ts';
import { PLAIN_GENE } from '../model/plain.ts';
import type { Programme, ShownTrait } from '../model/programme.ts';

/** Further explanations that are looked at whether or not the programme names them; the keys of their words. */
export const CANDIDATES = ['oneCopy', 'twoCopies', 'complementary', 'duplicate'] as const;
export type CandidateKey = (typeof CANDIDATES)[number];

export interface Candidate {
  readonly key: CandidateKey;
  readonly needs: Needs;
}

/** A gene that the programme does not name, for explanations with a second gene. */
const ANOTHER = 'another-gene';
/** Frequency of its allele in every tree; own choice, as nothing is known of it. */
const ANOTHER_FREQUENCY = 0.3;

const same = (a: Needs, b: Needs): boolean => {
  const written = (needs: Needs): string =>
    needs.needs === 'total'
      ? `total ${[...needs.genes].sort().join()} ${String(needs.copies)}`
      : `${needs.of.length === 1 ? 'all' : needs.needs} ${needs.of
          .map(({ gene, copies }) => `${gene}${String(copies)}`)
          .sort()
          .join()}`;
  return written(a) === written(b);
};

/** Explanations that the trait does not hold among its rules, on its own genes where it names two, else with another one. */
export function candidatesOf(trait: ShownTrait): Candidate[] {
  const heaviest = trait.rules.reduce((most, rule) => (rule.weight > most.weight ? rule : most));
  const [one = ANOTHER] = genesOf(heaviest.needs);
  const two = trait.rules.flatMap(({ needs }) => genesOf(needs)).find((gene) => gene !== one) ?? ANOTHER;
  const all: Candidate[] = [
    { key: 'oneCopy', needs: { needs: 'all', of: [{ gene: one, copies: 1 }] } },
    { key: 'twoCopies', needs: { needs: 'all', of: [{ gene: one, copies: 2 }] } },
    { key: 'complementary', needs: { needs: 'all', of: [one, two].map((gene) => ({ gene, copies: 1 })) } },
    { key: 'duplicate', needs: { needs: 'any', of: [one, two].map((gene) => ({ gene, copies: 1 })) } },
  ];
  return all.filter(({ needs }) => !trait.rules.some((rule) => same(rule.needs, needs)));
}

/** The programme with the other gene, unknown in every tree and neighbour. */
export function withAnotherGene(programme: Programme): Programme {
  const unknown = { frequency: ANOTHER_FREQUENCY };
  return {
    ...programme,
    genes: [...programme.genes, { id: ANOTHER, name: ANOTHER, ...PLAIN_GENE }],
    trees: programme.trees.map((tree) => ({ ...tree, genes: { ...tree.genes, [ANOTHER]: unknown } })),
    pools: programme.pools.map((pool) => ({
      ...pool,
      ...(pool.background ? { background: { ...pool.background, genes: { ...pool.background.genes, [ANOTHER]: ANOTHER_FREQUENCY } } } : {}),
    })),
  };
}
