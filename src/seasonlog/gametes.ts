import { qualifies, type Copies, type Needs } from '../genetics/family.ts';
import { gameteShares, placeGenes, type PlacedGene } from '../genetics/tray/linkage.ts';
import { setsOfTree } from '../genetics/tray/passage.ts';
import { parentOf, type Ruling } from '../genetics/tray/parent.ts';
import { genesOf } from '../genetics/family.ts';
import type { Batch } from '../model/log.ts';
import { meanOf } from '../model/mean.ts';
import type { Pool, Programme } from '../model/programme.ts';
import { loggedTree } from './batches.ts';
import { recordOf, type Looks } from './families.ts';

/** A genotype that a parent may have: its chance, and the shares of its gametes by the set of counted alleles. */
export interface ParentState {
  readonly chance: number;
  readonly gametes: Float64Array;
}

/** What seedlings are under a rule: with the right genes, and without any copy that counts. */
export interface Seedlings {
  readonly right: number;
  readonly none: number;
}

const DEEPEST = 3;

/** One rule of a trait with the genes it rests on, and what is known of parents under it. */
export class RuleGenes {
  private readonly genes: readonly PlacedGene[];
  private readonly fits: Uint8Array;
  private readonly found = new Map<string, readonly ParentState[] | undefined>();

  constructor(
    private readonly programme: Programme,
    private readonly ruling: Ruling,
  ) {
    this.genes = placeGenes(programme, genesOf(ruling.needs));
    this.fits = fitting(this.genes, ruling.needs);
  }

  private get masks(): number {
    return 1 << this.genes.length;
  }

  /** What a parent named in a batch may be; undefined where nothing is known of it. Pollen of many trees is one state. */
  statesOf(parent: Batch['seed'] | Batch['pollen'], depth = 0): readonly ParentState[] | undefined {
    const key = parentKey(parent);
    if (!this.found.has(key)) this.found.set(key, this.work(parent, depth));
    return this.found.get(key);
  }

  private work(parent: Batch['seed'] | Batch['pollen'], depth: number): readonly ParentState[] | undefined {
    if (typeof parent === 'string') return this.pollenInTheAir();
    if ('tag' in parent) return this.ofTag(parent.tag, depth);
    const tree = this.programme.trees.find(({ id }) => id === parent.tree);
    // By homologues of two sets; of trees with more nothing is concluded from their seedlings.
    return tree && setsOfTree(this.programme, tree) === 2 ? merged(parentOf(tree, this.genes, [this.ruling]).states, this.genes) : undefined;
  }

  /** A logged tree that became a parent: a seedling of its own batch, weighed by what was seen of it. */
  private ofTag(tag: string, depth: number): readonly ParentState[] | undefined {
    const found = loggedTree(this.programme, tag);
    if (!found || depth >= DEEPEST) return undefined;
    const mothers = this.statesOf(found.batch.seed, depth + 1);
    const fathers = found.batch.pollen === 'self' ? null : this.statesOf(found.batch.pollen, depth + 1);
    if (!mothers || fathers === undefined) return undefined;
    const record = recordOf(found.tree, this.ruling.trait);
    const seedlings: { a: number; b: number; chance: number }[] = [];
    for (const mother of mothers)
      for (const father of fathers ?? [{ chance: 1, gametes: mother.gametes }])
        mother.gametes.forEach((g, a) =>
          father.gametes.forEach((h, b) => {
            const chance = mother.chance * father.chance * g * h * (record ? chanceOf(record, this.fits[a * this.masks + b] === 1, this.ruling) : 1);
            if (chance > 0) seedlings.push({ a, b, chance });
          }),
        );
    const total = seedlings.reduce((sum, { chance }) => sum + chance, 0);
    return merged(
      seedlings.map((one) => ({ ...one, chance: one.chance / total })),
      this.genes,
    );
  }

  /** Gametes of the pool: its named trees and neighbours by their weights, a father drawn for each seed. */
  pollenInTheAir(): readonly ParentState[] | undefined {
    const { pools, defaultPool } = this.programme;
    const pool = pools.find(({ id }) => id === defaultPool) ?? pools[0];
    const parts = pool ? this.partsOf(pool) : [];
    const total = parts.reduce((sum, { weight }) => sum + weight, 0);
    if (!(total > 0)) return undefined;
    const gametes = new Float64Array(this.masks);
    for (const part of parts) part.gametes.forEach((share, mask) => (gametes[mask] = (gametes[mask] ?? 0) + (share * part.weight) / total));
    return [{ chance: 1, gametes }];
  }

  private partsOf(pool: Pool): { weight: number; gametes: Float64Array }[] {
    const named = pool.trees.flatMap(({ tree, weight }) => {
      const states = this.statesOf({ tree });
      return states ? states.map(({ chance, gametes }) => ({ weight: weight * chance, gametes })) : [];
    });
    const { background } = pool;
    if (!background) return named;
    const gametes = Float64Array.from({ length: this.masks }, (_, mask) =>
      this.genes.reduce((share, { id }, g) => {
        const frequency = meanOf(background.genes[id] ?? 0);
        return share * ((mask >> g) & 1 ? frequency : 1 - frequency);
      }, 1),
    );
    return [...named, { weight: background.weight, gametes }];
  }

  /** Seedlings of two sets of gametes. */
  seedlings(mother: Float64Array, father: Float64Array): Seedlings {
    let right = 0;
    mother.forEach((g, a) => father.forEach((h, b) => (right += this.fits[a * this.masks + b] === 1 ? g * h : 0)));
    return { right: Math.min(1, right), none: (mother[0] ?? 0) * (father[0] ?? 0) };
  }
}

export const parentKey = (parent: Batch['seed'] | Batch['pollen']): string =>
  typeof parent === 'string' ? 'air' : 'tree' in parent ? `tree ${parent.tree}` : `tag ${parent.tag}`;

/** Chance of a record by whether the tree has the right genes; the number of orders is left out. */
export function chanceOf({ showed, seasons }: Looks, right: boolean, ruling: Pick<Ruling, 'canShow' | 'seasons' | 'falseShow'>): number {
  const at = (p: number): number => p ** showed * (1 - p) ** (seasons - showed);
  return right ? ruling.canShow * at(ruling.seasons) + (1 - ruling.canShow) * at(ruling.falseShow) : at(ruling.falseShow);
}

/** fits[a · masks + b]: whether the seedling of gametes a and b has the right genes. */
function fitting(genes: readonly PlacedGene[], needs: Needs): Uint8Array {
  const masks = 1 << genes.length;
  return Uint8Array.from({ length: masks * masks }, (_, place) => {
    const [a, b] = [Math.floor(place / masks), place % masks];
    const copies: Copies = Object.fromEntries(genes.map(({ id }, g) => [id, ((a >> g) & 1) + ((b >> g) & 1)]));
    return +qualifies(copies, needs);
  });
}

/** States that differ in the names of their homologues only are one. */
function merged(states: readonly { readonly a: number; readonly b: number; readonly chance: number }[], genes: readonly PlacedGene[]): ParentState[] {
  const found = new Map<string, { a: number; b: number; chance: number }>();
  for (const { a, b, chance } of states) {
    const key = `${String(Math.min(a, b))} ${String(Math.max(a, b))}`;
    found.set(key, { a, b, chance: chance + (found.get(key)?.chance ?? 0) });
  }
  return [...found.values()].map(({ a, b, chance }) => ({ chance, gametes: gameteShares({ a, b }, genes) }));
}
