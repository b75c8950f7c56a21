import { programmeSchema, type Programme } from '../../model/programme.ts';
import { valueAt, type Path } from '../../model/walk.ts';
import { finerText } from '../../text/inheritance.ts';
import type { FormItem } from './form-items.ts';

/** Fields that few programmes need, by section: they stand folded under a line that says what they come to. */
const FINER: Readonly<Record<string, readonly string[]>> = {
  kinds: ['ploidy', 'inheritance', 'pollenRejection', 'maleShare'],
  genes: ['doubleReduction', 'passes'],
  trees: ['s', 'sex', 'testCrosses'],
  crosses: ['usableSeedlings', 'motherClones', 'necrosis'],
};

/** Whether a form over an entry folds a field of it. */
export function isFiner(path: Path, { path: at }: Pick<FormItem, 'path'>): boolean {
  return path.length === 2 && (FINER[String(path[0])]?.includes(String(at[2])) ?? false);
}

/** The line over the finer points of an entry; empty for one that has none, or is not sound. */
export function finerLine(path: Path, programme: unknown): string {
  const entry = valueAt(programme, path);
  const at = Number(path[1]);
  const of = <K extends 'kinds' | 'genes' | 'trees' | 'crosses'>(section: K): Programme[K][number] | undefined =>
    programmeSchema.shape[section].safeParse([entry]).success ? (programme as Programme)[section][at] : undefined;
  switch (path[0]) {
    case 'kinds': {
      const kind = of('kinds');
      return kind ? finerText.kind(kind) : '';
    }
    case 'genes': {
      const gene = of('genes');
      return gene ? finerText.gene(gene) : '';
    }
    case 'trees': {
      const tree = of('trees');
      const kinds = valueAt(programme, ['kinds']) as Programme['kinds'] | undefined;
      return tree
        ? finerText.tree(
            tree,
            kinds?.find(({ id }) => id === tree.kind),
          )
        : '';
    }
    case 'crosses': {
      const cross = of('crosses');
      return cross ? finerText.cross(cross) : '';
    }
    default:
      return '';
  }
}
