import type { Batch } from '../model/log.ts';
import type { Generation, Programme } from '../model/programme.ts';
import type { Round } from './rounds.ts';
import { inSingles, latestCount, standingIn } from './standing.ts';
import type { BearingTree, GenerationToday } from './today-types.ts';

/** A batch and the round that it belongs to. */
interface Member {
  readonly generation: number;
  readonly batch: Batch;
}

/** Measured traits that decide about a generation’s trees: its keep rule’s, the index’s and the goal’s. */
export function judgedTraits({ goal }: Pick<Programme, 'goal'>, { keep }: Generation): string[] {
  const named = [...keep.conditions, ...goal.conditions].flatMap((condition) => (condition.type === 'measured' ? [condition.trait] : []));
  const ranked = keep.rank === 'index' || keep.bestLeft ? Object.entries(keep.weights).flatMap(([trait, weight]) => (weight === 0 ? [] : [trait])) : [];
  return [...new Set([...named, ...ranked])];
}

/** What was done in each round, and what came of it. */
export function generationsToday(rounds: readonly Round[], members: readonly Member[], trees: readonly BearingTree[]): GenerationToday[] {
  const begun = begunFrom(rounds, members);
  return rounds.map(({ generation: { judge } }, g) => {
    const batches = members.flatMap(({ generation, batch }) => (generation === g ? [batch] : []));
    const bearing = trees.filter(({ generation }) => generation === g);
    const kept = bearing.filter(({ picked }) => picked);
    const sum = (of: (batch: Batch) => number | undefined): number => batches.reduce((total, batch) => total + (of(batch) ?? 0), 0);
    const latest = (stage: 'fruits' | 'seeds' | 'grafted') => sum((batch) => latestCount(batch, stage)?.count.count);
    const raised = (batch: Batch) => latestCount(batch, 'cameUp')?.count.count ?? Math.max(batch.trees.length, standingIn(batch) ?? 0);
    const years = batches.map(({ year }) => year);
    const up = batches.filter((batch) => raised(batch) > 0).map(({ year }) => year + 1);
    return {
      springs: new Set(years).size,
      firstPollination: least(years),
      raised: sum(raised),
      firstSeedling: least(up),
      firstFruit: least(bearing.map(({ bore }) => bore)),
      firstPick: least(kept.map((tree) => keptIn(tree, judge))),
      kept: kept.length,
      fruiting: bearing.length,
      counted: {
        flowers: sum((batch) => {
          const found = latestCount(batch, 'flowers');
          return found ? inSingles(found.count) : 0;
        }),
        fruits: latest('fruits'),
        seeds: latest('seeds'),
        seedlings: sum(raised),
        grafted: latest('grafted'),
      },
      goneOn: begun.has(g),
    };
  });
}

/** Rounds that a later one has begun from, and what these began after in turn. */
function begunFrom(rounds: readonly Round[], members: readonly Member[]): ReadonlySet<number> {
  const begun = new Set<number>();
  for (const { generation } of members) for (let g = rounds[generation]?.after ?? -1; g >= 0; g = rounds[g]?.after ?? -1) begun.add(g);
  return begun;
}

const least = (list: readonly number[]): number | null => (list.length === 0 ? null : Math.min(...list));

/** Year in which a tree marked as kept was: that of its last judged crop, or of its first fruit where none was asked or noted. */
function keptIn({ bore, seasons }: BearingTree, judge: number): number {
  return judge === 0 ? bore : (seasons[judge - 1]?.year ?? seasons.at(-1)?.year ?? bore);
}
