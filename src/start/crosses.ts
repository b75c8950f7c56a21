import { crossBetween, kindOf, type CatalogueCross } from '../catalogue/catalogue.ts';
import { meanOf } from '../model/mean.ts';
import type { Cross, Kind, Stock } from '../model/programme.ts';
import type { Answers, Partner } from './answers.ts';
import { counted, orCounted, single } from './guesses.ts';
import { twoByTwo } from './sets.ts';

type Weakness = NonNullable<Cross['weakness']>;

/** Kinds, cross entries and stocks that the trees of the answers bring with them. */
export interface Biology {
  readonly kinds: readonly Kind[];
  readonly crosses: readonly Cross[];
  readonly stocks: readonly Stock[];
  /** The first partner of another kind. */
  readonly wide: Partner | undefined;
}

const SHORTEST_MONTHS = 0.05;

/** Half of the weak were dead by an age: from the onset on. An onset that lies later cannot be right, so half that age is taken. */
function dying(onset: Weakness['onset'], months: number): Pick<Weakness, 'onset' | 'course'> {
  const seen = { kind: 'counted', note: `Half of the weak ones were dead by ${String(months)} months.` } as const;
  const begins = meanOf(onset);
  if (begins < months) return { onset, course: { halfLife: { value: Math.max(SHORTEST_MONTHS, months - begins), source: seen } } };
  return { onset: single(months / 2, 'Before half of the weak ones were dead.'), course: { halfLife: { value: months / 2, source: seen } } };
}

function withOwn(cross: Cross, { counts, weakMonths }: Answers): Cross {
  const { weakness, set, germination } = cross;
  const isWide = cross.seed !== cross.pollen;
  const fared = isWide &&
    weakness && {
      ...weakness,
      ...(counts.weak ? { share: counted(counts.weak) } : {}),
      ...(weakMonths === undefined ? {} : dying(weakness.onset, weakMonths)),
    };
  return { ...cross, set: orCounted(set, counts.set), germination: orCounted(germination, counts.germination), ...(fared ? { weakness: fared } : {}) };
}

/** The cross that question 4 asks about: the tree with its first partner, or with its own kind where there is none. */
export function askedCross({ tree, partners }: Answers): CatalogueCross | undefined {
  const pollen = partners[0]?.kind ?? tree.kind;
  return kindOf(tree.kind) && kindOf(pollen) ? crossBetween(tree.kind, pollen) : undefined;
}

/** True if the asked cross has weak seedlings, so that it is worth asking how they fared. */
export const hasWeak = (answers: Answers): boolean => askedCross(answers)?.cross.weakness !== undefined && answers.partners[0]?.kind !== answers.tree.kind;

const byId = <T extends { readonly id: string }>(entries: readonly (T | undefined)[]): T[] => [
  ...new Map(entries.flatMap((entry) => (entry ? [[entry.id, entry] as const] : []))).values(),
];

/** A programme holds at most 20 stocks. */
const MOST_STOCKS = 20;

/**
 * Looks up what the catalogue has for the kinds of the answers; the breeder's own counts take the place of its figures for the asked cross.
 * @throws RangeError for a kind that the catalogue has not
 */
export function biologyOf(answers: Answers): Biology {
  const { tree, partners } = answers;
  const wide = partners.find(({ kind }) => kind !== tree.kind);
  const found = [crossBetween(tree.kind, tree.kind), ...(wide ? [crossBetween(tree.kind, wide.kind)] : [])];
  const asked = askedCross(answers)?.cross.id;
  const entries = [tree.kind, ...partners.map(({ kind }) => kind)].map(kindOf);
  const crosses = found.flatMap(({ cross, backcrosses }) => [cross.id === asked ? withOwn(cross, answers) : cross, ...backcrosses]);
  const kinds = byId([...entries.map((entry) => entry?.kind), ...found.map(({ hybrid }) => hybrid)]);
  return {
    kinds: wide ? twoByTwo(kinds) : kinds,
    crosses: byId(crosses),
    stocks: byId(kindOf(tree.kind)?.stocks.slice(0, MOST_STOCKS) ?? []),
    wide,
  };
}
