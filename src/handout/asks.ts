import { printNumber } from '../model/numbers.ts';
import type { Generation, Plan, Programme, Tree } from '../model/programme.ts';
import type { GenerationOutlook, PlanOutlook, YearSpread } from '../results/outlook.ts';
import { whole } from '../text/charts.ts';
import { asksText, yearsOf } from '../text/handout.ts';
import { handCount } from '../text/sentences.ts';
import { unitBeside } from './wanted.ts';

/** What is asked of somebody, and when. */
export interface Ask {
  readonly who: string;
  readonly what: string;
  readonly when: string;
}

interface Part {
  readonly generation: Generation;
  /** All rounds of it. */
  readonly outlooks: readonly GenerationOutlook[];
}

const partsOf = (plan: Plan, outlook: PlanOutlook): Part[] =>
  plan.generations.map((generation) => ({ generation, outlooks: outlook.generations.filter(({ id }) => id === generation.id) }));

/** From the year by which a tenth have begun in the first round to the year by which nine tenths have in the last. */
function spanOf(outlooks: readonly GenerationOutlook[], pick: (of: GenerationOutlook) => YearSpread, last: number, more = 0): string | null {
  const spans = outlooks.filter(({ reached }) => reached > 0).map(pick);
  const from = spans[0]?.p10 ?? null;
  if (from === null) return null;
  const to = spans.at(-1)?.p90 ?? null;
  return yearsOf(from, to === null ? null : Math.min(last, to + more), last);
}

/** Years of pollinating: springs may be several. */
const springsOf = ({ generation, outlooks }: Part, last: number): string | null =>
  spanOf(outlooks, ({ firstPollination }) => firstPollination, last, generation.springs - 1);

const treesIn = (parents: Generation['seedParents'] | Generation['pollen'], trees: readonly Tree[]): Tree[] =>
  typeof parents === 'string' ? [] : parents.flatMap((parent) => trees.filter(({ id }) => 'tree' in parent && parent.tree === id));

interface Use {
  readonly tree: Tree;
  readonly role: 'flowers' | 'seed' | 'pollen';
  readonly flowers: number;
  readonly years: string;
}

function usesOf(part: Part, trees: readonly Tree[], last: number): Use[] {
  const { generation } = part;
  const years = springsOf(part, last);
  if (years === null) return [];
  const role = generation.pollen === 'open' && generation.flowers === 0 ? 'seed' : 'flowers';
  const mothers = treesIn(generation.seedParents, trees).map((tree): Use => ({ tree, role, flowers: generation.flowers, years }));
  const fathers = treesIn(generation.pollen, trees).map((tree): Use => ({ tree, role: 'pollen', flowers: 0, years }));
  const back = generation.reciprocal ? fathers.map((use): Use => ({ ...use, role: 'flowers', flowers: generation.flowers })) : [];
  return [...mothers, ...fathers, ...back];
}

/** Two spans as they are; more of them from the first year to the last. */
function joined(spans: readonly string[], last: number): string {
  if (spans.length <= 2) return spans.join(', ');
  const years = spans.flatMap((span) => [...span.matchAll(/\d{4}/g)].map(([year]) => Number(year)));
  return yearsOf(Math.min(...years), Math.max(...years), last);
}

/** One line for each tree and what it gives. */
function treeAsks(uses: readonly Use[], last: number): Ask[] {
  const keys = [...new Set(uses.map(({ tree, role }) => `${tree.id} ${role}`))];
  return keys.flatMap((key) => {
    const same = uses.filter(({ tree, role }) => `${tree.id} ${role}` === key);
    const [first] = same;
    if (!first) return [];
    const years = joined([...new Set(same.map((use) => use.years))], last);
    const who = asksText.keeper([first.tree.name]);
    if (first.role === 'seed') return [{ who, what: asksText.seed, when: asksText.autumns(years) }];
    const when = asksText.springs(years);
    if (first.role === 'pollen') return [{ who, what: asksText.pollen, when }];
    return [{ who, what: asksText.flowers(whole(Math.max(...same.map(({ flowers }) => flowers)))), when }];
  });
}

/** Trees of which only one stands: whoever has another place should have a second. */
function copyAsk(uses: readonly Use[], firstSpring: number): Ask[] {
  const single = [...new Map(uses.map(({ tree }) => [tree.id, tree])).values()].filter(({ copies }) => copies === 1);
  if (single.length === 0) return [];
  return [{ who: asksText.keeper(single.map(({ name }) => name)), what: asksText.copy(single.length === 1), when: asksText.before(firstSpring) }];
}

function groundAsk(parts: readonly Part[], { mostPlaces }: PlanOutlook, { gardens, lastYear }: Programme): Ask[] {
  const places = handCount(mostPlaces.p90);
  const all = parts.flatMap(({ outlooks }) => outlooks);
  const when = spanOf(all, ({ firstSeedling }) => firstSeedling, lastYear);
  if (places < 1 || when === null) return [];
  const ends = all.at(-1)?.lastJudged.p90 ?? lastYear;
  const from = /^(?:from )?(\d{4})/.exec(when)?.[1] ?? '';
  const named = [...new Set(parts.flatMap(({ generation: { garden } }) => gardens.filter(({ id }) => id === garden).map(({ name }) => name)))];
  return [{ who: asksText.ground, what: asksText.places(whole(places), named.join(', ')), when: yearsOf(Number(from), Math.min(lastYear, ends), lastYear) }];
}

function graftAsks({ generation, outlooks }: Part, { stocks, lastYear }: Programme, { grafts }: PlanOutlook): Ask[] {
  const stockName = (id: string) => stocks.find((stock) => stock.id === id)?.name ?? id;
  const { rescue, backup } = generation;
  const asks: Ask[] = [];
  const raised = spanOf(outlooks, ({ firstSeedling }) => firstSeedling, lastYear);
  if (rescue && rescue.who !== 'none' && raised !== null && grafts.p50 > 0)
    asks.push({
      who: asksText.grafter,
      what: asksText.grafts(whole(handCount(grafts.p50)), printNumber(rescue.month), stockName(rescue.stock)),
      when: raised,
    });
  const picked = spanOf(outlooks, ({ firstPick }) => firstPick, lastYear);
  if (backup && picked !== null) asks.push({ who: asksText.grafter, what: asksText.backups(backup.copies, stockName(backup.stock)), when: picked });
  return asks;
}

/** First fruit years of every generation, in one line. */
function fruitAsk(parts: readonly Part[], lastYear: number): Ask[] {
  const seen = parts.flatMap(({ generation, outlooks }) => {
    const years = spanOf(outlooks, ({ firstFruit }) => firstFruit, lastYear);
    return years === null ? [] : [{ name: generation.name, years }];
  });
  const [only] = seen;
  if (!only) return [];
  const what = asksText.firstFruit(seen.map(({ name, years }) => (seen.length === 1 ? name : `${name} ${years}`)));
  return [{ who: asksText.grower, what, when: seen.length === 1 ? only.years : (/\d{4}/.exec(only.years)?.[0] ?? '') }];
}

/** What to note of each tree: the traits that the goal and the keeping go by. */
function noteAsks({ goal, traits, startYear }: Programme, { generations }: Plan, from: string): Ask[] {
  const named = new Set(
    [...goal.conditions, ...generations.flatMap(({ keep }) => keep.conditions)].flatMap((entry) => ('trait' in entry ? [entry.trait] : [])),
  );
  const what = traits
    .filter(({ id }) => named.has(id))
    .map((trait) => {
      if (trait.type === 'measured') return asksText.judgeMeasured(trait.name, unitBeside(trait.name, trait.unit));
      return trait.grade ? asksText.judgeGraded(trait.name, trait.grade.fruitsCut) : asksText.judgeShown(trait.name);
    });
  return [
    { who: asksText.everybody, what: asksText.count, when: `from ${String(startYear)}` },
    ...(what.length === 0 || from === '' ? [] : [{ who: asksText.taster, what: asksText.judge(what), when: `from ${from}` }]),
  ];
}

/**
 * What a plan asks of others, and when: years by which a tenth to nine tenths of the futures that come so far have begun.
 * @param programme already without what is left out
 */
export function asksOf(programme: Programme, plan: Plan, outlook: PlanOutlook): Ask[] {
  const { trees, startYear, lastYear } = programme;
  const parts = partsOf(plan, outlook);
  const uses = parts.flatMap((part) => usesOf(part, trees, lastYear));
  const fruit = fruitAsk(parts, lastYear);
  const from = /\d{4}/.exec(fruit[0]?.when ?? '')?.[0] ?? '';
  return [
    ...copyAsk(uses, startYear),
    ...treeAsks(uses, lastYear),
    ...groundAsk(parts, outlook, programme),
    ...parts.flatMap((part) => graftAsks(part, programme, outlook)),
    ...fruit,
    ...noteAsks(programme, plan, from),
  ];
}
