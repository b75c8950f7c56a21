import { type CatalogueTrait } from '../catalogue/catalogue.ts';
import { inheritanceNote } from '../catalogue/said.ts';
import type { Kind, Pool, Programme, Rule, Trait, Tree } from '../model/programme.ts';
import { range } from './guesses.ts';
import { seenOn } from './inheritance.ts';
import { setsOf } from '../model/sets.ts';
import { idGiver, sameName, sharedKinds } from './local.ts';
import { merged, type Merged } from './merge.ts';
import { rulesFor } from './sets.ts';

type Genes = Programme['genes'];
/** Whether a tree shows it, as far as its breeder knows. */
export type Shows = 'yes' | 'no' | 'unknown';

/** A trait of the catalogue that a programme may take in. */
export interface TraitOffer {
  readonly known: CatalogueTrait;
  /** The programme’s kind that it is known in. */
  readonly kind: Kind;
  /** The programme’s trees that may carry it: of that kind, and hybrids of it. */
  readonly trees: readonly Tree[];
}

const genesOf = (trait: Trait): readonly string[] =>
  trait.type === 'measured'
    ? trait.genes.map(({ gene }) => gene)
    : trait.rules.flatMap(({ needs }) => (needs.needs === 'total' ? needs.genes : needs.of.map(({ gene }) => gene)));

/** The programme’s own gene of that id and name. */
const ownGene = ({ genes }: Programme, { id, name }: Genes[number]): boolean => genes.some((gene) => gene.id === id && sameName(gene.name, name));

/** It has been taken in before, here or by the first questions: a trait of that id, or one that rests on all its genes. */
function isThere(programme: Programme, { id, genes }: CatalogueTrait): boolean {
  const own = programme.traits.map(genesOf);
  return (
    programme.traits.some((trait) => trait.id === id) ||
    (genes.every((gene) => ownGene(programme, gene)) && own.some((used) => genes.every((gene) => used.includes(gene.id))))
  );
}

/** The kind, and the kinds of its seedlings with others. */
const kinOf = ({ crosses }: Programme, { id }: Kind): ReadonlySet<string> =>
  new Set([id, ...crosses.flatMap(({ seed, pollen, gives }) => (seed === id || pollen === id ? [gives] : []))]);

/** Traits whose inheritance the catalogue knows, of the kinds that a programme has, without those it has taken in. Pure. */
export function traitOffers(programme: Programme): readonly TraitOffer[] {
  return sharedKinds(programme).flatMap(({ entry, own }) => {
    const kin = kinOf(programme, own);
    const trees = programme.trees.filter(({ kind }) => kin.has(kind));
    return entry.traits.filter((known) => !isThere(programme, known)).map((known) => ({ known, kind: own, trees }));
  });
}

/** Nobody counted how common any of these genes is among such trees: wide, and less common than not. */
const common = () => range(0.02, 0.15, 0.6, 'How common this is among such trees was not counted. What you saw of a tree weighs more.');

const renamed = ({ needs, ...rule }: Rule, gene: (id: string) => string): Rule => ({
  ...rule,
  needs: needs.needs === 'total' ? { ...needs, genes: needs.genes.map(gene) } : { ...needs, of: needs.of.map((each) => ({ ...each, gene: gene(each.gene) })) },
});

function withGenes(trait: Trait, gene: (id: string) => string, sets: number): Trait {
  if (trait.type === 'measured') return { ...trait, genes: trait.genes.map((each) => ({ ...each, gene: gene(each.gene) })) };
  return { ...trait, rules: rulesFor(trait.rules, sets).map((each) => renamed(each, gene)) };
}

/** The genes of an offer that the programme lacks, under free ids, and what each gene of the catalogue is called there. */
function newGenes(programme: Programme, genes: Genes): { readonly added: Genes; readonly ids: ReadonlyMap<string, string> } {
  const give = idGiver(programme.genes.map(({ id }) => id));
  const ids = new Map(genes.map((gene) => [gene.id, ownGene(programme, gene) ? gene.id : give(gene.id)]));
  return { added: genes.flatMap((gene) => (ownGene(programme, gene) ? [] : [{ ...gene, id: ids.get(gene.id) ?? gene.id }])), ids };
}

/**
 * Adds a known trait with its genes and rules at the end of their lists. Trees that may carry it get their genes as not known, weighed by
 * what was seen of them; neighbours of the kind get the same guess. Nothing that was stated before is changed.
 * @param shows what was seen, by the id of a tree; a tree that is left out counts as not known
 * @returns the new document, checked; or why it cannot be
 */
export function addTrait(programme: Programme, { known, kind, trees }: TraitOffer, shows: Readonly<Record<string, Shows>>): Merged {
  const { added, ids } = newGenes(programme, known.genes);
  const gene = (id: string): string => ids.get(id) ?? id;
  const names = programme.traits.map(({ name }) => name);
  const trait: Trait = {
    ...withGenes(known.trait, gene, setsOf(kind)),
    id: idGiver(programme.traits.map(({ id }) => id))(known.id),
    name: names.some((name) => sameName(name, known.name)) ? `${known.name} (${kind.name})` : known.name,
    note: inheritanceNote(known),
  };
  const carries = new Set(trees.map(({ id }) => id));
  const unknown = () => Object.fromEntries(known.genes.map(({ id }) => [gene(id), common()]));
  const tree = (each: Tree): Tree => {
    if (!carries.has(each.id)) return each;
    const states = Object.fromEntries(Object.entries(unknown()).map(([id, frequency]) => [id, { frequency }]));
    const seen = trait.type === 'shown' ? seenOn({ shows: shows[each.id] ?? 'unknown' }, trait.id) : {};
    return { ...each, genes: { ...states, ...each.genes }, seen: { ...each.seen, ...seen } };
  };
  const pool = (each: Pool): Pool =>
    each.background?.kind === kind.id ? { ...each, background: { ...each.background, genes: { ...unknown(), ...each.background.genes } } } : each;
  return merged(programme, {
    ...programme,
    genes: [...programme.genes, ...added],
    traits: [...programme.traits, trait],
    trees: programme.trees.map(tree),
    pools: programme.pools.map(pool),
  });
}
