import type { Batch } from '../model/log.ts';
import type { Cross, Plan, Programme } from '../model/programme.ts';
import { roundsOf, type Round } from './rounds.ts';
import type { Family, NotPlacedReason, StandingParent, StandingPollen } from './today-types.ts';

/** A logged tree that later batches can name as a parent. */
export interface KnownTree {
  /** Place in PlanToday.trees. */
  readonly at: number;
  readonly generation: number;
  readonly kind: string;
}

export type Placed =
  { readonly ok: true; readonly family: Family; readonly cross: Cross } | { readonly ok: false; readonly why: NotPlacedReason; readonly about: string };

/** Finds where batches of the log belong in one plan: by the generation they name, else by their parents. */
export class Places {
  readonly rounds: readonly Round[];

  /** @param known trees of batches placed so far, by tag */
  constructor(
    private readonly programme: Programme,
    plan: Plan,
    private readonly known: ReadonlyMap<string, KnownTree>,
  ) {
    this.rounds = roundsOf(plan);
  }

  /** @throws RangeError where the plan has no such round */
  round(at: number): Round {
    const found = this.rounds[at];
    if (!found) throw new RangeError('There is no such generation.');
    return found;
  }

  place(batch: Batch): Placed {
    const no = (why: NotPlacedReason, about = ''): Placed => ({ ok: false, why, about });
    const at = this.generationOf(batch);
    if (at < 0) return no('noGeneration');
    const seed = this.parent(batch.seed);
    if (!seed) return no('noSeedParent', typeof batch.seed === 'object' && 'tag' in batch.seed ? batch.seed.tag : '');
    const pollen = this.pollen(batch, at);
    if (!pollen) return no('noPollen', typeof batch.pollen === 'object' && 'tag' in batch.pollen ? batch.pollen.tag : '');
    const seedKind = this.kindOf(seed);
    const cross = this.entry(at, seedKind, this.pollenKind(pollen, at) ?? seedKind);
    if (!cross) return no('noCross', `${seedKind} × ${this.pollenKind(pollen, at) ?? seedKind}`);
    const born = batch.year + 1 + cross.dormancy;
    return {
      ok: true,
      cross,
      family: { batch: batch.id, name: batch.name, generation: at, seed, pollen, cross: cross.id, pollinated: batch.year, born },
    };
  }

  /** The generation named, else the first whose parents fit; a round after the first where a parent stands in the round before. −1: none. */
  private generationOf(batch: Batch): number {
    const named = this.rounds.findIndex(({ generation }) => generation.id === batch.generation);
    if (named < 0) return this.rounds.findIndex((_, at) => this.fits(batch, at));
    const parents = [batch.seed, batch.pollen].flatMap((parent) => (typeof parent === 'object' && 'tag' in parent ? (this.known.get(parent.tag) ?? []) : []));
    const { id, repeat } = this.round(named).generation;
    const before = parents.filter(({ generation }) => this.rounds[generation]?.generation.id === id).map(({ generation }) => generation);
    return before.length === 0 ? named : Math.min(named + repeat - 1, Math.max(...before) + 1);
  }

  private fits(batch: Batch, at: number): boolean {
    const { generation } = this.round(at);
    const { pollen } = generation;
    const seed = (parent: Batch['seed'] | Batch['pollen']) => this.among(generation.seedParents, parent, at);
    if (typeof pollen === 'string') return pollen === batch.pollen && seed(batch.seed);
    if (batch.pollen === 'mixed') return seed(batch.seed);
    const father = (parent: Batch['seed'] | Batch['pollen']) => this.among(pollen, parent, at);
    return (seed(batch.seed) && father(batch.pollen)) || (generation.reciprocal && seed(batch.pollen) && father(batch.seed));
  }

  private among(sources: readonly object[], parent: Batch['seed'] | Batch['pollen'], at: number): boolean {
    if (typeof parent === 'string') return false;
    return sources.some((source) => {
      if ('tree' in parent) return 'tree' in source && source.tree === parent.tree;
      return 'picksOf' in source && this.known.get(parent.tag)?.generation === this.round(at).picksOf(String(source.picksOf));
    });
  }

  private parent(parent: Batch['seed'] | Batch['pollen']): StandingParent | null {
    if (typeof parent === 'string') return null;
    if ('tree' in parent) return parent;
    const found = this.known.get(parent.tag);
    return found ? { logged: found.at } : null;
  }

  /** Open pollen, and pollen nobody knows, is whatever is in the air; there must be a pool that says what that is. */
  private pollen({ seed, pollen }: Batch, at: number): StandingPollen | null {
    const { generation } = this.round(at);
    if (pollen === 'open' || pollen === 'unknown') return generation.pool === undefined && this.programme.defaultPool === undefined ? null : 'air';
    if (pollen === 'self') return this.parent(seed);
    if (pollen === 'mixed') return this.mixed(at) === null ? null : 'mixed';
    return this.parent(pollen);
  }

  /** Kind of the first founding tree among the generation’s pollen parents. */
  private mixed(at: number): string | null {
    const { pollen } = this.round(at).generation;
    const named = Array.isArray(pollen) ? pollen.find((source) => 'tree' in source) : undefined;
    return named && 'tree' in named ? (this.programme.trees.find(({ id }) => id === named.tree)?.kind ?? null) : null;
  }

  private pollenKind(pollen: StandingPollen, at: number): string | null {
    return pollen === 'air' ? null : pollen === 'mixed' ? this.mixed(at) : this.kindOf(pollen);
  }

  private kindOf(parent: StandingParent): string {
    if ('tree' in parent) return this.programme.trees.find(({ id }) => id === parent.tree)?.kind ?? '';
    return [...this.known.values()].find(({ at }) => at === parent.logged)?.kind ?? '';
  }

  private entry(at: number, seed: string, pollen: string): Cross | undefined {
    const { crosses } = this.programme;
    const named = crosses.find(({ id }) => id === this.round(at).generation.cross);
    return named ?? crosses.find((cross) => cross.seed === seed && cross.pollen === pollen);
  }
}
