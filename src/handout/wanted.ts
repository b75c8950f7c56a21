import { middleOf } from '../model/estimate-forms.ts';
import { printNumber } from '../model/numbers.ts';
import type { Plan, Programme, ShownTrait, Tree } from '../model/programme.ts';
import { pairsReached } from '../model/reach.ts';
import type { PlanOutlook } from '../results/outlook.ts';
import { answerText, wantedText } from '../text/handout.ts';

/** A unit that the name of a trait does not say already. */
export const unitBeside = (name: string, unit: string): string => (name.split(' ').includes(unit) ? '' : unit);

/** The name without a unit that ends it, so that the number can stand between: “keeping weeks” is “keeping 10 weeks”. */
function unitApart(name: string, unit: string): { readonly said: string; readonly unit: string } {
  const ends = unit !== '' && name.endsWith(` ${unit}`);
  return ends ? { said: name.slice(0, -unit.length - 1), unit } : { said: name, unit: unitBeside(name, unit) };
}

/** What the goal asks of a tree, in one sentence. */
export function wantedSentence({ goal, traits, genes }: Programme): string {
  const traitOf = (id: string) => traits.find((trait) => trait.id === id);
  const parts = goal.conditions.map((condition) => {
    if (condition.type === 'test') return wantedText.test(genes.find(({ id }) => id === condition.gene)?.name ?? condition.gene);
    const trait = traitOf(condition.trait);
    const name = trait?.name ?? condition.trait;
    if (condition.type === 'shown') return wantedText.shown(name, condition.grade, condition.atLeast === undefined ? (condition.atMost ?? null) : null);
    const { said, unit } = trait?.type === 'measured' ? unitApart(name, trait.unit) : { said: name, unit: '' };
    const least = condition.atLeast === undefined ? null : wantedText.atLeast(said, printNumber(condition.atLeast), unit);
    return least ?? wantedText.atMost(said, printNumber(condition.atMost ?? 0), unit);
  });
  return wantedText.wanted([...new Set(parts)]);
}

export const provenSentence = ({ goal }: Programme): string => wantedText.proven(goal.crops, goal.trees);

/** The trait that a tree must show, which most of the work is about. */
function soughtTrait({ goal, traits }: Programme): ShownTrait | null {
  const sought = goal.conditions.find((condition) => condition.type === 'shown' && !(condition.atLeast === undefined && condition.atMost !== undefined));
  const trait = sought?.type === 'shown' ? traits.find(({ id }) => id === sought.trait) : undefined;
  return trait?.type === 'shown' ? trait : null;
}

/** Genes that any explanation of a trait asks for. */
const genesOf = ({ rules }: ShownTrait): ReadonlySet<string> =>
  new Set(rules.flatMap(({ needs }) => (needs.needs === 'total' ? needs.genes : needs.of.map(({ gene }) => gene))));

function carries(tree: Tree, trait: ShownTrait): boolean {
  const seen = tree.seen[trait.id];
  if (seen && ('source' in seen || seen.showed > 0)) return true;
  return [...genesOf(trait)].some((gene) => {
    const state = tree.genes[gene];
    return state !== undefined && 'copies' in state && state.copies > 0;
  });
}

/** A shown share above this is as good as every season. */
const NEARLY_ALL = 0.95;
/** Fewer weak seedlings than this are nobody's trouble. */
const FEW_WEAK = 0.1;

/** Years from pollen to first fruit, over the generations that every future reaches, on average. */
function yearsToFruit({ generations }: PlanOutlook): number | null {
  const waits = generations.flatMap(({ firstPollination, firstFruit }) =>
    firstPollination.p50 === null || firstFruit.p50 === null ? [] : [firstFruit.p50 - firstPollination.p50],
  );
  return waits.length === 0 ? null : Math.round(waits.reduce((sum, years) => sum + years, 0) / waits.length);
}

/** Why it is hard, from what the programme says and its futures show; most telling first. */
export function hardSentences(programme: Programme, plan: Plan, outlook: PlanOutlook): string[] {
  const trait = soughtTrait(programme);
  const sentences: string[] = [];
  if (trait) {
    const holders = programme.trees.filter((tree) => carries(tree, trait)).map(({ name }) => name);
    if (holders.length <= 2) sentences.push(answerText.sources(trait.name, holders));
    const seasons = middleOf(trait.seasonsShown);
    if (seasons < NEARLY_ALL) sentences.push(answerText.seasons(Math.round(seasons * 100)));
    if (trait.rules.length > 1) sentences.push(answerText.rules(trait.rules.length));
  }
  const years = yearsToFruit(outlook);
  if (years !== null && years > 0) sentences.push(answerText.slow(years, outlook.generations.length));
  const weak = pairsReached(programme, plan)
    .flatMap(({ entry, stray }) => (entry?.weakness && !stray ? [{ name: entry.name, share: middleOf(entry.weakness.share) }] : []))
    .sort((a, b) => b.share - a.share)[0];
  if (weak && weak.share >= FEW_WEAK) sentences.push(answerText.weak(Math.round(weak.share * 100), weak.name));
  return sentences;
}
