import type { Batch, LoggedTree } from '../model/log.ts';
import { meanOf } from '../model/mean.ts';
import type { Programme, ShownTrait } from '../model/programme.ts';
import { entryOf, kindsOf, type LeftOut } from './batches.ts';

/** How often a tree was looked at for a trait and how often it showed it. */
export interface Looks {
  readonly showed: number;
  readonly seasons: number;
}

/** Trees of one batch that were looked at for one trait. */
export interface LookedFamily {
  readonly batch: Batch;
  readonly trees: readonly { readonly tree: LoggedTree; readonly record: Looks }[];
  /** Records that are alike, and how many trees have them. */
  readonly records: readonly (Looks & { readonly trees: number })[];
  /** Share of the seedlings fathered by stray pollen, as the programme has it; 0 where pollen was not given by hand. */
  readonly stray: number;
  /** A stray seedling's father is the seed parent itself. */
  readonly straySelf: boolean;
}

/** Seasons in which a tree was looked at for a trait, and in which at least one fruit showed it. */
export function recordOf({ seasons }: Pick<LoggedTree, 'seasons'>, trait: string): Looks | undefined {
  const looked = seasons.flatMap(({ seen }) => seen[trait] ?? []);
  return looked.length === 0 ? undefined : { showed: looked.filter(({ showed }) => showed > 0).length, seasons: looked.length };
}

/** Families of which trees were looked at for a trait. A catastrophe says nothing against them: batches kept out of the rates stay in. */
export function lookedFamilies(programme: Programme, trait: ShownTrait): { readonly families: LookedFamily[]; readonly leftOut: LeftOut[] } {
  const leftOut: LeftOut[] = [];
  const families = programme.log.batches.flatMap((batch): LookedFamily[] => {
    const trees = batch.trees.flatMap((tree) => {
      const record = recordOf(tree, trait.id);
      return record ? [{ tree, record }] : [];
    });
    if (trees.length === 0) return [];
    if (batch.seed === 'unknown') {
      leftOut.push({ batch: batch.id, name: batch.name, why: 'unknownParents', about: trait.name });
      return [];
    }
    const alike = new Map<string, Looks & { trees: number }>();
    for (const { record } of trees) {
      const key = `${String(record.showed)} of ${String(record.seasons)}`;
      alike.set(key, { ...record, trees: (alike.get(key)?.trees ?? 0) + 1 });
    }
    return [{ batch, trees, records: [...alike.values()], ...strayOf(programme, batch) }];
  });
  return { families, leftOut };
}

/** Of fruit set by hand, the share that stray pollen set: it has the flowers that the wanted pollen left. */
function strayOf(programme: Programme, batch: Batch): { stray: number; straySelf: boolean } {
  const entry = entryOf(programme, batch);
  const kind = programme.kinds.find(({ id }) => id === kindsOf(programme, batch).seed);
  const straySelf = kind?.selfCompatible === true;
  if (!entry || typeof batch.pollen === 'string') return { stray: 0, straySelf };
  const set = meanOf(entry.set);
  const strays = (1 - set) * meanOf(entry.straySet);
  return { stray: strays > 0 ? strays / (set + strays) : 0, straySelf };
}
