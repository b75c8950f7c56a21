import { filledBlank, type Blank } from './blanks.ts';
import type { Condition, Programme, Trait } from './programme.ts';
import { traitSchema } from './biology.ts';

const without = <T>(table: Readonly<Record<string, T>>, id: string): Record<string, T> =>
  Object.fromEntries(Object.entries(table).filter(([key]) => key !== id));

/** What a trait of another type would start from; a trait that is shown or not needs a gene first. */
export function blankTrait(type: Trait['type'], programme: Programme): Blank {
  const member = traitSchema.options.find((option) => option.shape.type.safeParse(type).success);
  return member ? filledBlank(member, programme, ['traits', programme.traits.length]) : { ok: false, needs: 'traits' };
}

/** The same trait asked of in the other way; by how much, its breeder must say anew. */
function asked(condition: Condition, id: string, type: Trait['type']): Condition {
  if (condition.type === 'test' || condition.trait !== id || condition.type === type) return condition;
  return type === 'shown' ? { type, trait: id, grade: 'any' } : { type, trait: id };
}

/**
 * Returns the programme with a trait that is now shown or not, or now measured. Id, name and note stay; so do the conditions that ask
 * of it, without their bounds, so that the check asks for new ones. What was stated of trees by the old type has no meaning any more and goes.
 * @param at place of the trait in the list
 * @returns the programme itself if there is nothing to change or the other type cannot be started
 */
export function withTraitType(programme: Programme, at: number, type: Trait['type']): Programme {
  const old = programme.traits[at];
  const blank = blankTrait(type, programme);
  if (!old || old.type === type || !blank.ok) return programme;
  const { id, name, note } = old;
  const read = traitSchema.safeParse({ ...(typeof blank.value === 'object' ? blank.value : {}), id, name, ...(note === undefined ? {} : { note }) });
  if (!read.success) return programme;
  const conditions = (list: readonly Condition[]): Condition[] => list.map((condition) => asked(condition, id, type));
  return {
    ...programme,
    traits: programme.traits.with(at, read.data),
    goal: { ...programme.goal, conditions: conditions(programme.goal.conditions) },
    trees: programme.trees.map((tree) => ({ ...tree, values: without(tree.values, id), seen: without(tree.seen, id) })),
    pools: programme.pools.map((pool) =>
      pool.background
        ? { ...pool, background: { ...pool.background, values: without(pool.background.values, id), spread: without(pool.background.spread, id) } }
        : pool,
    ),
    plans: programme.plans.map((plan) => ({
      ...plan,
      generations: plan.generations.map((generation) => ({
        ...generation,
        keep: { ...generation.keep, conditions: conditions(generation.keep.conditions), weights: without(generation.keep.weights, id) },
      })),
    })),
  };
}
