import type { Programme } from '../model/programme.ts';
import type { Frame } from '../results/frame.ts';
import { compile } from './compile.ts';
import { sortGenes } from './compile-genome.ts';

/** The words behind the columns that the engine gives for this programme. */
export function frameOf(programme: Programme): Frame {
  const compiled = compile(programme);
  const { origin } = compiled;
  const names = new Map([...programme.traits, ...programme.facts].map((entry) => [entry.id, entry.name]));
  return {
    startYear: programme.startYear,
    lastYear: programme.lastYear,
    years: compiled.years,
    hoursLimit: programme.limits.hoursPerYear ?? null,
    moneyLimit: programme.limits.moneyPerYear ?? null,
    placesLimit: programme.limits.places,
    plans: programme.plans.map((plan, p) => ({
      id: plan.id,
      mark: plan.mark,
      name: plan.name,
      generations: (compiled.plans[p]?.generations ?? []).map(({ id, round, name, seedParents, pollenParents }) => ({
        id,
        round,
        name,
        grownFrom: [...seedParents, ...pollenParents].reduce<number | null>(
          (found, { picksOf }) => (picksOf >= 0 ? Math.max(found ?? -1, picksOf) : found),
          null,
        ),
      })),
    })),
    shown: compiled.shown.map(({ id, rules }) => ({ name: names.get(id) ?? id, rules: rules.map((rule) => rule.name) })),
    facts: compiled.facts.map(({ id }) => ({ name: names.get(id) ?? '' })),
    measured: compiled.measured.map(({ id, unit }, t) => ({
      name: names.get(id) ?? id,
      unit,
      inGoal: compiled.goal.conditions.some(({ type, of }) => type === 1 && of === t),
    })),
    ...(origin
      ? {
          origin: {
            kinds: origin.kinds.map((k) => programme.kinds[k]?.name ?? ''),
            gene: origin.gene < 0 ? null : (sortGenes(programme)[origin.gene]?.name ?? null),
          },
        }
      : {}),
  };
}
