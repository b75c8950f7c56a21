import type { Generation, Plan, Programme, Rule } from '../../model/programme.ts';
import { withGeneration } from '../variants.ts';
import { certain, soon, yearsFrom, type If, type LeafTest, type Way } from './way.ts';

type Test = NonNullable<Generation['test']>;

/**
 * A leaf test exists from that year: generations without one then test every seedling before it is planted out, for at least one copy of the
 * gene that the goal needs most surely, and discard those without. In an early generation that can cost picks that a later cross would have made
 * good; in the last it saves room and work.
 */
export const leafTest: If = {
  id: 'leafTest',
  ways(programme, plan, all) {
    const untested = plan.generations.filter(({ test }) => test === undefined);
    if (untested.length === 0) return 'testedAlready';
    const gene = geneOf(programme);
    if (!gene) return 'noGene';
    const stated = statedFor(all, gene.id);
    const test: Test = { gene: gene.id, copies: 1, falsePositive: stated?.falsePositive ?? 0, falseNegative: stated?.falseNegative ?? 0, cull: true };
    const tested = (ids: readonly string[]) =>
      ids.reduce((edited, id) => withGeneration(edited, plan.id, id, (generation) => ({ ...generation, test })), programme);
    const said: LeafTest = { gene: gene.id, name: gene.name, needed: gene.needed, stated: stated !== undefined, hours: programme.hours.perTest };
    const way = (form: Way['form'], ids: readonly string[]): Way => {
      const edited = tested(ids);
      return {
        if: 'leafTest',
        form,
        garden: null,
        year: soon(programme),
        years: yearsFrom(programme.startYear, programme.lastYear),
        variant: (from) => certain(edited, { tests: { from, generations: ids } }),
        leafTest: said,
      };
    };
    const ids = untested.map(({ id }) => id);
    const last = plan.generations.at(-1)?.id ?? '';
    return [way('every', ids), ...(ids.length > 1 && ids.includes(last) ? [way('last', [last])] : [])];
  },
};

/** Errors of a test for this gene in any plan. */
const statedFor = (plans: readonly Plan[], gene: string): Test | undefined =>
  plans.flatMap(({ generations }) => generations.flatMap(({ test }) => (test?.gene === gene ? test : [])))[0];

/** The gene that most of the belief says every tree of the goal carries; undefined when no rule needs any one gene. */
function geneOf({ goal, traits, genes }: Programme): { readonly id: string; readonly name: string; readonly needed: number } | undefined {
  const wanted = goal.conditions.flatMap((condition) => (condition.type === 'shown' && (condition.atLeast ?? 0) > 0 ? condition.trait : []));
  const rules = traits.filter(({ id }) => wanted.includes(id)).flatMap((trait) => (trait.type === 'shown' ? [trait.rules] : []));
  const shares = genes.map(({ id, name }) => ({ id, name, needed: Math.max(0, ...rules.map((list) => neededBy(list, id))) }));
  return shares.filter(({ needed }) => needed > 0).sort((a, b) => b.needed - a.needed)[0];
}

function neededBy(rules: readonly Rule[], gene: string): number {
  const weight = (list: readonly Rule[]) => list.reduce((sum, rule) => sum + rule.weight, 0);
  return weight(rules.filter((rule) => needs(rule, gene))) / weight(rules);
}

/** Whether no tree without the gene follows the rule. */
function needs({ needs: need }: Rule, gene: string): boolean {
  if (need.needs === 'all') return need.of.some((entry) => entry.gene === gene);
  if (need.needs === 'any') return need.of.every((entry) => entry.gene === gene);
  // Without it the others, two copies each, must fall short.
  return need.genes.includes(gene) && 2 * (new Set(need.genes).size - 1) < need.copies;
}
