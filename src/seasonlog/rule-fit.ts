import type { Ruling } from '../genetics/tray/parent.ts';
import type { Programme } from '../model/programme.ts';
import { logSum, normalised } from '../statistics/weighed.ts';
import type { LookedFamily, Looks } from './families.ts';
import { chanceOf, parentKey, RuleGenes, type ParentState, type Seedlings } from './gametes.ts';
import type { Showing } from './showing.ts';

/** A family under one rule: what its seedlings are for each pair of states of its parents. */
interface FamilyTable {
  readonly family: LookedFamily;
  readonly mother: string;
  readonly father: string | null;
  readonly mothers: readonly ParentState[];
  readonly fathers: readonly ParentState[];
  /** At mother · fathers + father. */
  readonly pairs: readonly { readonly wanted: Seedlings; readonly stray: Seedlings | null }[];
}

/** Families that share parents of whom it is not known what they carry. */
interface Block {
  readonly tables: readonly FamilyTable[];
  /** Every way the parents may be: ln of its chance, and the pair of each family. */
  readonly ways: readonly { readonly log: number; readonly pairs: readonly number[] }[];
}

/** What a rule says of one family after all that was seen. */
export interface FamilyView {
  readonly batch: string;
  /** Chance that one further seedling shows it in the usual number of seasons, with its belief. */
  readonly shows: readonly { readonly chance: number; readonly weight: number }[];
  /** For each record of the family: chance that such a tree carries at least one copy that counts. */
  readonly carries: readonly (Looks & { readonly chance: number })[];
}

export interface RuleFit {
  /** ln of the chance of all that was seen, up to what is the same for all rules. */
  readonly evidence: number;
  readonly families: readonly FamilyView[];
  /** Batches whose parents nothing is known of. */
  readonly unknown: readonly string[];
}

/** Ways of the parents that are weighed together; families beyond that are taken one by one. */
const MOST_WAYS = 1500;
const BINS = 24;

function tableOf(genes: RuleGenes, family: LookedFamily): FamilyTable | undefined {
  const { batch, straySelf } = family;
  const mothers = genes.statesOf(batch.seed);
  const fathers = batch.pollen === 'self' ? [] : genes.statesOf(batch.pollen);
  if (!mothers || !fathers) return undefined;
  const air = family.stray > 0 && !straySelf ? genes.pollenInTheAir()?.[0] : undefined;
  const pairs = mothers.flatMap((mother) => {
    const strayFather = family.stray > 0 ? (straySelf ? mother.gametes : air?.gametes) : undefined;
    const stray = strayFather ? genes.seedlings(mother.gametes, strayFather) : null;
    return (batch.pollen === 'self' ? [mother] : fathers).map((father) => ({ wanted: genes.seedlings(mother.gametes, father.gametes), stray }));
  });
  return { family, mother: parentKey(batch.seed), father: batch.pollen === 'self' ? null : parentKey(batch.pollen), mothers, fathers, pairs };
}

/** Distinct parents of some families with their states. */
function parentsOf(tables: readonly FamilyTable[]): Map<string, readonly ParentState[]> {
  const parents = new Map<string, readonly ParentState[]>();
  for (const { mother, father, mothers, fathers } of tables) {
    parents.set(mother, mothers);
    if (father !== null) parents.set(father, fathers);
  }
  return parents;
}

function blockOf(tables: readonly FamilyTable[]): Block {
  const parents = [...parentsOf(tables)];
  let ways: { log: number; state: Record<string, number> }[] = [{ log: 0, state: {} }];
  for (const [key, states] of parents)
    ways = ways.flatMap(({ log, state }) => states.map(({ chance }, i) => ({ log: log + Math.log(chance), state: { ...state, [key]: i } })));
  return {
    tables,
    ways: ways.map(({ log, state }) => ({
      log,
      pairs: tables.map(({ mother, father, fathers }) =>
        father === null ? (state[mother] ?? 0) : (state[mother] ?? 0) * fathers.length + (state[father] ?? 0),
      ),
    })),
  };
}

/** Puts families together that share an uncertain parent, unless that makes too many ways. */
function blocksOf(tables: readonly FamilyTable[]): Block[] {
  const groups: FamilyTable[][] = [];
  const uncertain = ({ mother, father, mothers, fathers }: FamilyTable): string[] => [
    ...(mothers.length > 1 ? [mother] : []),
    ...(father !== null && fathers.length > 1 ? [father] : []),
  ];
  for (const table of tables) {
    const own = new Set(uncertain(table));
    const joined = groups.filter((group) => group.some((other) => uncertain(other).some((key) => own.has(key))));
    for (const group of joined) groups.splice(groups.indexOf(group), 1);
    groups.push([...joined.flat(), table]);
  }
  return groups.flatMap((group) => {
    const ways = [...parentsOf(group).values()].reduce((product, states) => product * states.length, 1);
    return ways > MOST_WAYS ? group.map((table) => blockOf([table])) : [blockOf(group)];
  });
}

/** Shares of the seedlings of a pair, strays among them. */
function mixed({ wanted, stray }: FamilyTable['pairs'][number], share: number): Seedlings {
  const s = stray ? Math.min(1, share) : 0;
  return stray ? { right: (1 - s) * wanted.right + s * stray.right, none: (1 - s) * wanted.none + s * stray.none } : wanted;
}

const rulingOf = (ruling: Ruling, { canShow, seasons, falseShow }: Showing): Ruling => ({ ...ruling, canShow, seasons, falseShow });

/** ln of the chance of a family's records for each pair of its parents' states. */
function pairLogs({ family, pairs }: FamilyTable, ruling: Ruling, showing: Showing): number[] {
  const under = rulingOf(ruling, showing);
  const chances = family.records.map((record) => ({ trees: record.trees, right: chanceOf(record, true, under), wrong: chanceOf(record, false, under) }));
  const known = new Map<number, number>();
  return pairs.map((pair) => {
    const { right: share } = mixed(pair, family.stray * showing.strayTimes);
    let log = known.get(share);
    if (log === undefined) {
      log = chances.reduce((sum, { trees, right, wrong }) => sum + trees * Math.log(share * right + (1 - share) * wrong), 0);
      known.set(share, log);
    }
    return log;
  });
}

/**
 * Weighs one rule by what families showed: every way its parents may be and every way the trait may show.
 * @param usual seasons in which a further seedling would be looked at
 *
 * **Source:** Bayes' rule; family shares after Mendel (1866), linkage after Haldane (1919); records as docs/model.md §§ 4, 9.
 */
export function fitRule(programme: Programme, ruling: Ruling, looked: readonly LookedFamily[], ways: readonly Showing[], usual: number): RuleFit {
  const genes = new RuleGenes(programme, ruling);
  const found = looked.map((family) => ({ family, table: tableOf(genes, family) }));
  const tables = found.flatMap(({ table }) => table ?? []);
  const blocks = blocksOf(tables);
  // ln of each way of each block, under each way the trait may show.
  const logs = ways.map((showing) =>
    blocks.map((block) => {
      const byTable = block.tables.map((table) => pairLogs(table, ruling, showing));
      return block.ways.map(({ log, pairs }) => pairs.reduce((sum, pair, t) => sum + (byTable[t]?.[pair] ?? -Infinity), log));
    }),
  );
  const totals = logs.map((byBlock, u) => byBlock.reduce((sum, block) => sum + logSum(block), Math.log(ways[u]?.weight ?? 0)));
  const believed = normalised(totals);
  const views = blocks.flatMap((block, b) => {
    // Weight of each pair of each family under each way the trait may show.
    const weights = block.tables.map((table) => ways.map(() => new Float64Array(table.pairs.length)));
    believed.forEach((belief, u) => {
      if (belief < 1e-9) return;
      const within = normalised(logs[u]?.[b] ?? []);
      block.ways.forEach(({ pairs }, w) =>
        pairs.forEach((pair, t) => {
          const of = weights[t]?.[u];
          if (of) of[pair] = (of[pair] ?? 0) + belief * (within[w] ?? 0);
        }),
      );
    });
    return block.tables.map((table, t) => viewOf(table, ruling, ways, weights[t] ?? [], usual));
  });
  return { evidence: logSum(totals), families: views, unknown: found.flatMap(({ family, table }) => (table ? [] : [family.batch.id])) };
}

function viewOf({ family, pairs }: FamilyTable, ruling: Ruling, ways: readonly Showing[], weights: readonly Float64Array[], usual: number): FamilyView {
  const bins = Array.from({ length: BINS }, () => ({ weight: 0, sum: 0 }));
  const carries = family.records.map(() => 0);
  ways.forEach((showing, u) => {
    const under = rulingOf(ruling, showing);
    const never: Looks = { showed: 0, seasons: usual };
    const [shows, wrongly] = [1 - chanceOf(never, true, under), 1 - chanceOf(never, false, under)];
    const chances = family.records.map((record) => ({ right: chanceOf(record, true, under), wrong: chanceOf(record, false, under) }));
    weights[u]?.forEach((weight, p) => {
      const pair = pairs[p];
      if (weight === 0 || !pair) return;
      const { right, none } = mixed(pair, family.stray * showing.strayTimes);
      const chance = right * shows + (1 - right) * wrongly;
      const bin = bins[Math.min(BINS - 1, Math.floor(chance * BINS))];
      if (bin) {
        bin.weight += weight;
        bin.sum += weight * chance;
      }
      chances.forEach(({ right: ifRight, wrong: ifWrong }, r) => {
        const all = right * ifRight + (1 - right) * ifWrong;
        const carrying = right * ifRight + Math.max(0, 1 - right - none) * ifWrong;
        carries[r] = (carries[r] ?? 0) + (all > 0 ? (weight * carrying) / all : 0);
      });
    });
  });
  return {
    batch: family.batch.id,
    shows: bins.flatMap(({ weight, sum }) => (weight > 0 ? [{ chance: sum / weight, weight }] : [])),
    carries: family.records.map(({ showed, seasons }, r) => ({ showed, seasons, chance: carries[r] ?? 0 })),
  };
}
