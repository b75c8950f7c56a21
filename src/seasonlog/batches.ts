import { meanOf } from '../model/mean.ts';
import type { Batch, LoggedTree } from '../model/log.ts';
import type { Cross, Kind, Programme } from '../model/programme.ts';

/** Why a batch, or some of its counts, speaks to no rate. */
export const LEFT_OUT = [
  'apart',
  'noKind',
  'noEntry',
  'doesNotAddUp',
  'eventLoss',
  'noGrafting',
  'noWeakness',
  'weakCross',
  'graftedWeak',
  'noLastLook',
  'graftAge',
  'noRule',
  'unknownParents',
] as const;
export type LeftOutReason = (typeof LEFT_OUT)[number];

export interface LeftOut {
  readonly batch: string;
  readonly name: string;
  readonly why: LeftOutReason;
  /** What it concerns: a rate, or tags of trees; numbers as entered. */
  readonly about: string;
}

/** A batch with what its counts can speak to. */
export interface PlacedBatch {
  readonly batch: Batch;
  readonly entry: Cross;
  /** Of its seedlings. */
  readonly kind: Kind;
  /** Fertility of its parents' kinds, multiplied; 1 for ordinary trees. */
  readonly fertility: number;
  /** Seed parent and pollen, as far as they are told apart. */
  readonly pair: string;
  /** First spring in which its seedlings stand. */
  readonly germinates: number;
}

type Parent = Batch['seed'] | Batch['pollen'];

/** The logged tree of a tag and its batch; the first if the tag is written twice. */
export function loggedTree(programme: Programme, tag: string): { readonly batch: Batch; readonly tree: LoggedTree } | undefined {
  for (const batch of programme.log.batches) {
    const tree = batch.trees.find((one) => one.tag === tag);
    if (tree) return { batch, tree };
  }
  return undefined;
}

/** How many parents back a tag is followed: further back, a log that names itself would never end. */
const DEEPEST = 4;

function kindOf(programme: Programme, parent: Parent, stated: string | undefined, depth: number): string | undefined {
  if (typeof parent === 'string') return stated;
  if ('tree' in parent) return programme.trees.find(({ id }) => id === parent.tree)?.kind;
  if (stated !== undefined || depth >= DEEPEST) return stated;
  const found = loggedTree(programme, parent.tag);
  return found && entryOf(programme, found.batch, depth + 1)?.gives;
}

/** Kinds of seed and pollen parent, as far as the log says; open, mixed and own pollen is taken to be of the seed parent’s kind unless it is said. */
export function kindsOf(programme: Programme, batch: Batch, depth = 0): { readonly seed: string | undefined; readonly pollen: string | undefined } {
  const seed = kindOf(programme, batch.seed, batch.seedKind, depth);
  const near = batch.pollen === 'open' || batch.pollen === 'self' || batch.pollen === 'mixed';
  return { seed, pollen: kindOf(programme, batch.pollen, batch.pollenKind, depth) ?? (near ? seed : undefined) };
}

/** The cross entry of a batch: that of its ordered pair of kinds, or the one that has its way of raising seed. */
export function entryOf(programme: Programme, batch: Batch, depth = 0): Cross | undefined {
  const { seed, pollen } = kindsOf(programme, batch, depth);
  const fitting = programme.crosses.filter((cross) => cross.seed === seed && cross.pollen === pollen);
  return fitting.find(({ routes }) => batch.route !== undefined && routes.some(({ id }) => id === batch.route)) ?? fitting[0];
}

const nameOf = (parent: Parent): string => (typeof parent === 'string' ? parent : 'tree' in parent ? `tree ${parent.tree}` : `tag ${parent.tag}`);

/** Batches whose counts speak to rates, and those that do not with the reason. */
export function placeBatches(programme: Programme): { readonly placed: PlacedBatch[]; readonly leftOut: LeftOut[] } {
  const placed: PlacedBatch[] = [];
  const leftOut: LeftOut[] = [];
  for (const batch of programme.log.batches) {
    if (batch.counts.length === 0 && batch.trees.length === 0) continue;
    const out = (why: LeftOutReason, about = ''): void => void leftOut.push({ batch: batch.id, name: batch.name, why, about });
    if (batch.apart) {
      out('apart');
      continue;
    }
    const { seed, pollen } = kindsOf(programme, batch);
    const entry = entryOf(programme, batch);
    const kind = programme.kinds.find(({ id }) => id === entry?.gives);
    if (seed === undefined || pollen === undefined) out('noKind');
    else if (!entry || !kind) out('noEntry', `${seed} × ${pollen}`);
    else {
      const fertility = (id: string, key: 'fertilityAsSeedParent' | 'fertilityAsPollenParent'): number => {
        const found = programme.kinds.find((one) => one.id === id);
        return found ? meanOf(found[key]) : 1;
      };
      placed.push({
        batch,
        entry,
        kind,
        fertility: fertility(seed, 'fertilityAsSeedParent') * (batch.pollen === 'open' ? 1 : fertility(pollen, 'fertilityAsPollenParent')),
        pair: `${nameOf(batch.seed)} × ${nameOf(batch.pollen)}`,
        germinates: batch.year + 1 + entry.dormancy,
      });
    }
  }
  return { placed, leftOut };
}
