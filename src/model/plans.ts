import type { Plan, Programme } from './programme.ts';
import { MARKS } from './plan.ts';

/** A short id that is not among the used ones. */
export function freshId(base: string, used: Iterable<string>): string {
  const plain =
    base
      .normalize('NFKD')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 50) || 'entry';
  const taken = new Set(used);
  if (!taken.has(plain)) return plain;
  for (let n = 2; ; n += 1) if (!taken.has(`${plain}-${String(n)}`)) return `${plain}-${String(n)}`;
}

/** A name that no plan has: the given one, or the same with the first free number from 2. */
export function freshName(name: string, { plans }: Programme): string {
  const taken = new Set(plans.map((plan) => plan.name));
  if (!taken.has(name)) return name;
  for (let n = 2; ; n += 1) if (!taken.has(`${name} ${String(n)}`)) return `${name} ${String(n)}`;
}

/** First letter that no plan carries; null when all eight are given. */
export function freeMark({ plans }: Programme): Plan['mark'] | null {
  return MARKS.find((mark) => !plans.some((plan) => plan.mark === mark)) ?? null;
}

/** Adds a plan at the end, or after another. */
export function withPlan(programme: Programme, plan: Plan, after?: string): Programme {
  const at = after === undefined ? programme.plans.length : programme.plans.findIndex(({ id }) => id === after) + 1;
  return { ...programme, plans: programme.plans.toSpliced(at, 0, plan) };
}

/** A copy to vary: same generations, a letter and a name of its own. Null when all letters are given. */
export function copyPlan(programme: Programme, id: string): Programme | null {
  const plan = programme.plans.find((entry) => entry.id === id);
  const mark = freeMark(programme);
  if (!plan || !mark) return null;
  const name = freshName(`${plan.name}, varied`, programme);
  return withPlan(
    programme,
    {
      ...plan,
      id: freshId(
        plan.id,
        programme.plans.map((entry) => entry.id),
      ),
      mark,
      name,
    },
    id,
  );
}

export function withoutPlan(programme: Programme, id: string): Programme {
  return { ...programme, plans: programme.plans.filter((plan) => plan.id !== id) };
}

/** Moves a plan up (−1) or down (+1); at the end it stays. */
export function movePlan(programme: Programme, id: string, by: -1 | 1): Programme {
  const from = programme.plans.findIndex((plan) => plan.id === id);
  const plan = programme.plans[from];
  const to = from + by;
  if (!plan || to < 0 || to >= programme.plans.length) return programme;
  return { ...programme, plans: programme.plans.toSpliced(from, 1).toSpliced(to, 0, plan) };
}
