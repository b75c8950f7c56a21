import { FactReader } from '../engine/fact-reader.ts';
import { freshId } from '../model/plans.ts';
import type { Plan, Programme, Tree } from '../model/programme.ts';
import { wholePower } from '../random/elementary.ts';
import type { Columns } from '../results/columns.ts';
import type { Interval } from '../results/outlook.ts';
import { wilson } from '../statistics/interval.ts';
import { differenceOf, outcomeOf, type Difference, type Outcome } from './outcome.ts';
import { noAnswer, type Answer, type AskOptions, type Question } from './question.ts';
import { runInSteps, stepsTo } from './steps.ts';
import { onlyPlan, withTree } from './variants.ts';

const MOST_COPIES = 4;
/** Futures in which the tree's losses are counted; enough to show that they agree with what is reckoned. */
const COUNTED = 400;

export interface CopiesOptions extends AskOptions {
  /** Id of the tree; if left out the source of a trait that the plan uses, or the first tree it uses. */
  readonly tree?: string;
}

export interface CopiesWay {
  readonly copies: number;
  /** Gardens they stand in; one that the programme does not have is a second one like the first. */
  readonly gardens: number;
  readonly asItStands: boolean;
  /** Chance that no copy is left by each spring from the first year to the last, reckoned over what the guesses allow. */
  readonly lostBy: readonly number[];
  /** The same by the last year, counted in futures. */
  readonly lostCounted: Interval;
  readonly outcome: Outcome;
  /** This minus the tree as it stands; null for that itself. */
  readonly minusAsItStands: Difference | null;
}

export interface CopiesAnswer extends Answer {
  readonly question: 'copies';
  readonly tree: string;
  readonly name: string;
  /** Calendar year of the first entry of `lostBy`. */
  readonly startYear: number;
  /** One to four copies in one garden, then two to four in two; the tree as it stands among them. */
  readonly ways: readonly CopiesWay[];
}

/** What do copies of the source tree save? `clear` says whether any number of them makes a clear difference to the plan. */
export const copies: Question<CopiesAnswer, CopiesOptions> = {
  id: 'copies',
  async ask(programme, { plan: id, tree: asked, runs = programme.runs }, futures, report) {
    const plan = programme.plans.find((entry) => entry.id === id);
    if (!plan) return noAnswer('copies', id, 'noPlan');
    const used = treesOf(programme, plan);
    const tree = used.find((entry) => entry.id === asked) ?? sourceTree(used);
    if (!tree) return noAnswer('copies', id, 'noTree');
    const choices = choicesOf(onlyPlan(programme, id), tree);
    const losses = choices.map((choice) => lossesOf(choice.programme, tree.id));
    const stands = choices.findIndex(({ asItStands }) => asItStands);
    const answerOf = (columns: readonly Columns[], done: boolean): CopiesAnswer => {
      const [standing] = columns.slice(stands);
      const ways = choices.flatMap((choice, c): CopiesWay[] => {
        const [mine] = columns.slice(c);
        const loss = losses[c];
        if (!mine || !loss || !standing) return [];
        const { copies: number, gardens, asItStands } = choice;
        return [
          {
            copies: number,
            gardens,
            asItStands,
            ...loss,
            outcome: outcomeOf(mine, programme.startYear),
            minusAsItStands: asItStands ? null : differenceOf(mine, standing),
          },
        ];
      });
      return {
        question: 'copies',
        plan: id,
        done,
        futures: columns[0]?.runs ?? 0,
        clear: ways.some(({ minusAsItStands }) => minusAsItStands?.clear === true),
        cannotSay: null,
        tree: tree.id,
        name: tree.name,
        startYear: programme.startYear,
        ways,
      };
    };
    const variants = choices.map((choice) => ({ programme: choice.programme, plan: 0 }));
    const columns = await runInSteps(futures, variants, stepsTo(runs), (part, last) => report(answerOf(part, last)));
    return answerOf(columns, true);
  },
};

/** Named trees that a plan crosses, in the order of its generations. */
export function treesOf({ trees }: Programme, { generations }: Plan): readonly Tree[] {
  const ids = new Set(
    generations.flatMap(({ seedParents, pollen }) =>
      [...seedParents, ...(Array.isArray(pollen) ? pollen : [])].flatMap((parent) => ('tree' in parent ? parent.tree : [])),
    ),
  );
  return [...ids].flatMap((id) => trees.find((tree) => tree.id === id) ?? []);
}

/** Of trees, the first that is the source of a trait, or else the first. */
export const sourceTree = (trees: readonly Tree[]): Tree | undefined =>
  trees.find(({ seen }) => Object.values(seen).some((seenAs) => 'source' in seenAs)) ?? trees[0];

interface Choice {
  readonly copies: number;
  readonly gardens: number;
  readonly asItStands: boolean;
  readonly programme: Programme;
}

function choicesOf(programme: Programme, tree: Tree): readonly Choice[] {
  const home = tree.gardens[0] ?? programme.gardens[0]?.id;
  // Where no tree stands in a garden that can be lost, a second garden saves nothing.
  const places = home === undefined ? [] : [home, ...tree.gardens.filter((id) => id !== home)];
  const { programme: wider, second } = withSecondGarden(programme, home, places[1]);
  const stands = { copies: tree.copies, gardens: Math.max(1, Math.min(tree.copies, new Set(tree.gardens).size)) };
  const choice = (number: number, gardens: readonly string[]): Choice => ({
    copies: number,
    gardens: Math.max(1, gardens.length),
    asItStands: false,
    programme: withTree(wider, tree.id, (entry) => ({ ...entry, copies: number, gardens: [...gardens] })),
  });
  const numbers = Array.from({ length: MOST_COPIES }, (_, i) => i + 1);
  const one = numbers.map((number) => choice(number, places.slice(0, 1)));
  const two = home !== undefined && second !== null ? numbers.slice(1).map((number) => choice(number, [home, second])) : [];
  const all = [...one, ...two].filter(({ copies: number, gardens }) => number !== stands.copies || gardens !== stands.gardens);
  return [{ ...stands, asItStands: true, programme }, ...all].sort((a, b) => a.gardens - b.gardens || a.copies - b.copies);
}

function withSecondGarden(programme: Programme, home: string | undefined, taken: string | undefined): { programme: Programme; second: string | null } {
  if (home === undefined) return { programme, second: null };
  const other = taken ?? programme.gardens.find(({ id }) => id !== home)?.id;
  if (other !== undefined) return { programme, second: other };
  const first = programme.gardens.find(({ id }) => id === home);
  if (!first) return { programme, second: null };
  const id = freshId(`${home} the second`, [home]);
  return { programme: { ...programme, gardens: [...programme.gardens, { ...first, id }] }, second: id };
}

function lossesOf(programme: Programme, tree: string): Pick<CopiesWay, 'lostBy' | 'lostCounted'> {
  const years = programme.lastYear - programme.startYear + 1;
  const reader = new FactReader(programme);
  const entry = programme.trees.find(({ id }) => id === tree);
  const home = programme.gardens[0]?.id;
  const gardens = entry && entry.gardens.length > 0 ? entry.gardens : home === undefined ? [] : [home];
  const lostBy = Array.from({ length: years }, () => 0);
  let counted = 0;
  for (let run = 0; run < COUNTED; run += 1) {
    reader.goTo(run);
    if (reader.treeLostIn(tree) < years) counted += 1;
    const losses = gardens.map((id) => reader.gardenLoss(id));
    for (let winters = 0; winters < years; winters += 1)
      lostBy[winters] = (lostBy[winters] ?? 0) + lost(entry?.copies ?? 1, reader.treeLoss(tree), losses, winters) / COUNTED;
  }
  return { lostBy, lostCounted: wilson(counted, COUNTED) };
}

/**
 * Returns the chance that all copies of a tree are lost after so many winters: a garden is lost as a whole or stands, copies in it die on
 * their own, and a tree is lost when its last copy is.
 * @param number of copies, dealt in turn over the gardens
 * @param yearlyLoss chance a year of losing one copy
 * @param gardenLosses chance a year of losing each garden; none: gardens are never lost
 *
 * **Source:** docs/model.md §4; own derivation, independent losses.
 */
export function lost(number: number, yearlyLoss: number, gardenLosses: readonly number[], winters: number): number {
  const dead = 1 - wholePower(1 - yearlyLoss, winters);
  const places = gardenLosses.length === 0 ? [0] : gardenLosses;
  return places.reduce((all, loss, g) => {
    const here = Math.ceil(Math.max(0, number - g) / places.length);
    return here === 0 ? all : all * (1 - wholePower(1 - loss, winters) * (1 - wholePower(dead, here)));
  }, 1);
}
