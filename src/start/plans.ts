import { meanOf } from '../model/mean.ts';
import { PATTERNS } from '../model/patterns.ts';
import type { Cross, Generation, Plan, Programme, Tree } from '../model/programme.ts';
import { bestGraftMonth, GRAFT_FROM, GRAFT_UNTIL } from '../statistics/graft.ts';
import type { Answers } from './answers.ts';
import { sizesFor, type Sizes } from './sizes.ts';

type Make = (stage: Stage) => Draft;
interface Draft {
  readonly name: string;
  readonly note: string;
  readonly generations: readonly Generation[];
}

/** What a plan can be made of: the trees, and how large things are. */
interface Stage {
  /** Trees, kinds and crosses; no plan yet. */
  readonly ground: Programme;
  readonly tree: Tree;
  /** Partners of the tree's own kind. */
  readonly own: readonly Tree[];
  readonly wide: Tree | undefined;
  readonly sizes: Sizes;
}

const NAME_LETTERS = 80;
/** Names are cut where a plan's name would get longer than it may be. */
const cut = (name: string, letters: number): string => (name.length <= letters ? name : `${name.slice(0, letters - 1).trimEnd()}…`);
function named(pattern: (a: string, b: string) => string, a: string, b = ''): string {
  const words = pattern('', '').length;
  const full = pattern(a, b);
  if (full.length <= NAME_LETTERS) return full;
  const each = Math.floor((NAME_LETTERS - words) / (pattern('a', '').length - words + (pattern('', 'b').length - words)));
  return pattern(cut(a, each), cut(b, each));
}

/** The generations of a starting pattern, filled with the trees that stand first in the ground given. */
function patterned(id: string, ground: Programme): readonly Generation[] {
  const started = PATTERNS.find((pattern) => pattern.id === id)?.start(ground);
  if (!started?.ok) throw new Error(`The pattern “${id}” does not fit these trees: ${started?.why ?? 'there is none of that name'}`);
  return started.plan.generations;
}

/** The generations with some of their settings changed, first to last. */
const changed = (generations: readonly Generation[], ...changes: readonly Partial<Generation>[]): Generation[] =>
  generations.map((generation, place) => ({ ...generation, ...changes[place] }));

/** Springs that a plan tries, so that one frost does not end it. */
const FIRST_SPRINGS = 3;
const LAST_SPRINGS = 4;
const STRAY = 0.5;

/** A first generation that only makes parents: to flower first is enough, unless something measured must be good. */
const parentsOnly = ({ keep }: Generation): Pick<Generation, 'keep' | 'judge'> =>
  keep.conditions.length === 0 ? { judge: 0, keep: { ...keep, rank: 'earliest' } } : { judge: 1, keep: { ...keep, bestLeft: true, weights: weightsOf(keep) } };
const weightsOf = ({ conditions }: Generation['keep']): Record<string, number> =>
  Object.fromEntries(conditions.flatMap((condition) => (condition.type === 'measured' ? [[condition.trait, 1]] : [])));
/** Nobody waits for ever for a first generation to be good. */
const notForEver: Generation['goOn'] = { when: 'enough', count: 2, atLatest: 15 };

const openSeed: Make = ({ ground, tree, sizes }) => {
  const [gathered, ...rest] = patterned('open', ground);
  if (!gathered) throw new Error('The pattern has no generation.');
  return {
    name: named((a) => `Open seed of ${a}, best × best`, tree.name),
    note: `Seed gathered under ${tree.name}, the best of it crossed with each other.`,
    generations: changed(
      [gathered, ...rest],
      { name: named((a) => `Seed of ${a}`, tree.name), seedlings: sizes.first, springs: FIRST_SPRINGS, ...parentsOnly(gathered), goOn: notForEver },
      { name: 'Best × best', seedlings: sizes.last, flowers: sizes.many, springs: LAST_SPRINGS, cover: STRAY },
    ),
  };
};

/** One generation, judged for good. */
function judgedAtOnce({ ground }: Stage, changes: Partial<Generation>): Generation[] {
  const [last] = patterned('open', ground).slice(-1);
  if (!last) throw new Error('The pattern has no generation.');
  return [{ ...last, id: 'only', springs: LAST_SPRINGS, ...changes }];
}

const openAtOnce: Make = (stage) => ({
  name: named((a) => `One large batch of seed of ${a}`, stage.tree.name),
  note: `As much seed of ${stage.tree.name} as the ground carries, judged and no more.`,
  generations: judgedAtOnce(stage, {
    name: named((a) => `Seed of ${a}`, stage.tree.name),
    seedParents: [{ tree: stage.tree.id }],
    pollen: 'open',
    flowers: 0,
    seedlings: stage.sizes.all,
  }),
});

const openTwice: Make = (stage) => {
  const { generations } = openSeed(stage);
  return {
    name: named((a) => `Open seed twice, from ${a}`, stage.tree.name),
    note: `Seed gathered under ${stage.tree.name}, then under the best of its seedlings; nothing is crossed by hand.`,
    generations: changed(generations, {}, { name: 'Seed of the best', pollen: 'open', flowers: 0 }),
  };
};

const brotherSister: Make = ({ ground, tree, own: [other], sizes }) => ({
  name: named((a, b) => `Brother × sister of ${a} × ${b}`, tree.name, other?.name),
  note: `${tree.name} × ${other?.name ?? ''}, then the first seedlings to flower crossed with each other.`,
  generations: changed(
    patterned('brother-sister', ground),
    { name: named((a, b) => `${a} × ${b}`, tree.name, other?.name), flowers: sizes.few, seedlings: sizes.first, springs: FIRST_SPRINGS, cover: STRAY },
    { flowers: sizes.many, seedlings: sizes.last, springs: LAST_SPRINGS, cover: STRAY },
  ),
});

const oneLargeCross: Make = (stage) => {
  const { tree, own, sizes } = stage;
  const partners = own.length > 1 ? 'its partners' : (own[0]?.name ?? '');
  return {
    name: named((a, b) => `One large cross, ${a} × ${b}`, tree.name, partners),
    note: `${tree.name} × ${own.map(({ name }) => name).join(', ')}: as many seedlings as the ground carries, judged and no more.`,
    generations: judgedAtOnce(stage, {
      name: named((a, b) => `${a} × ${b}`, tree.name, partners),
      seedParents: [{ tree: tree.id }],
      pollen: own.map(({ id }) => ({ tree: id })),
      flowers: sizes.many,
      seedlings: sizes.all,
      cover: STRAY,
    }),
  };
};

const backToTree: Make = (stage) => {
  const { tree, own } = stage;
  const { generations } = brotherSister(stage);
  return {
    name: named((a, b) => `Back to ${a}, after ${b}`, tree.name, own[0]?.name),
    note: `${tree.name} × ${own[0]?.name ?? ''}, then its first seedlings to flower crossed back to ${tree.name}.`,
    generations: changed(generations, {}, { name: named((a) => `Back to ${a}`, tree.name), seedParents: [{ tree: tree.id }] }),
  };
};

/** The month in which a graft saves most of the weak, at the middle of every estimate, in half months; never before they can be told. */
export function graftMonth({ weakness }: Cross, { stocks }: Pick<Programme, 'stocks'>): number {
  const [stock] = stocks;
  const onset = weakness ? meanOf(weakness.onset) : 0;
  if (!weakness || !stock || !('halfLife' in weakness.course)) return Math.min(GRAFT_UNTIL, Math.max(GRAFT_FROM, onset));
  const wood = { takeTender: meanOf(stock.takeTender), takeRipe: meanOf(stock.takeRipe), ripeMonths: stock.ripeMonths };
  const { month } = bestGraftMonth({ onset, halfLife: meanOf(weakness.course.halfLife), ...wood }, 1);
  return Math.min(GRAFT_UNTIL, Math.ceil(2 * Math.max(GRAFT_FROM, month)) / 2);
}

/** Weak seedlings die young and take little room until then: more of them are raised. */
const MORE_WIDE = 3;

/** A cross with another kind, then back to the tree's kind; `grafted`: its weak seedlings are put on other roots. */
const wideCross =
  (who: 'none' | 'weak' | 'every'): Make =>
  ({ ground, tree, wide, sizes }) => {
    const cross = ground.crosses.find(({ seed, pollen }) => seed === tree.kind && pollen === wide?.kind);
    const [first, ...rest] = patterned('wide-rescue', ground);
    if (!first?.rescue || !cross) throw new Error('The pattern grafts nothing.');
    const month = graftMonth(cross, ground);
    const stock = ground.stocks[0]?.name ?? '';
    const { rescue, ...plain } = first;
    const how = { none: 'Own roots', weak: 'Weak ones grafted', every: 'All grafted' }[who];
    const said = { none: 'its seedlings on their own roots', weak: `its weak seedlings grafted on ${stock}`, every: `all its seedlings grafted on ${stock}` }[
      who
    ];
    return {
      name: named((a, b) => `${how}, ${a} × ${b}`, tree.name, wide?.name),
      note: `${tree.name} × ${wide?.name ?? ''}, ${said}${who === 'none' ? '' : ` at ${String(month)} months`}; then back to ${tree.name}.`,
      generations: changed(
        [who === 'none' ? plain : { ...first, rescue: { ...rescue, who, month } }, ...rest],
        {
          name: named((a, b) => `${a} × ${b}`, tree.name, wide?.name),
          flowers: sizes.many,
          seedlings: Math.min(sizes.all, MORE_WIDE * sizes.first),
          springs: LAST_SPRINGS,
          cover: STRAY,
          ...parentsOnly(first),
          goOn: { when: 'firstPick', atLatest: 15 },
        },
        { name: named((a) => `Back to ${a}`, tree.name), flowers: sizes.many, seedlings: sizes.last, springs: LAST_SPRINGS, cover: STRAY },
      ),
    };
  };

/** Which three, by how pollen comes and who the partners are. */
function choose({ way: { how } }: Answers, { own, wide }: Stage): readonly [Make, Make, Make] {
  if (how === 'open') return [openSeed, openAtOnce, openTwice];
  if (own.length === 0) return [how === 'both' ? openSeed : wideCross('every'), wideCross('none'), wideCross('weak')];
  if (wide) return [how === 'both' ? openSeed : oneLargeCross, brotherSister, wideCross('weak')];
  return [how === 'both' ? openSeed : backToTree, brotherSister, oneLargeCross];
}

/**
 * Three plans worth comparing, from the starting patterns, filled with the breeder's own trees and as large as ground and hands allow.
 * @param ground trees, kinds, crosses, stocks and goal; the first tree is the one that has the trait
 */
export function plansFor(answers: Answers, ground: Omit<Programme, 'plans'>): Plan[] {
  const [tree, ...others] = ground.trees;
  if (!tree) throw new RangeError('There is no tree to plan for.');
  const whole: Programme = { ...ground, plans: [] };
  const stage: Stage = {
    ground: whole,
    tree,
    own: others.filter(({ kind }) => kind === tree.kind),
    wide: others.find(({ kind }) => kind !== tree.kind),
    sizes: sizesFor(whole),
  };
  const marks = ['A', 'B', 'C'] as const;
  return choose(answers, stage).map((make, place): Plan => {
    const { name, note, generations } = make(stage);
    const mark = marks[place] ?? 'C';
    return { id: `plan-${mark.toLowerCase()}`, mark, name, note, clearDiscards: true, generations: [...generations] };
  });
}
