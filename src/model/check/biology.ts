import { mostWeighedGenes } from '../limits.ts';
import { meanOf } from '../mean.ts';
import type { Path, Problem } from '../problem.ts';
import type { FirstFruit, Programme, Rule } from '../programme.ts';
import { setsOf } from '../sets.ts';

const stop = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: true });
const note = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: false });

/** Rates and rules that contradict each other, judged at the middle of each estimate. */
export function checkBiology(programme: Programme): Problem[] {
  return [...seasons(programme), ...rules(programme), ...measured(programme), ...weakness(programme), ...seeds(programme), ...founders(programme)];
}

/** So many kinds deep, seasons between those of two other kinds are followed; deeper, none would be found. */
const MOST_FOLLOWED = 4;

function seasons(programme: Programme): Problem[] {
  const depths = depthsOf(programme);
  return programme.kinds.flatMap(({ id, firstFruit, name }, k) => {
    const path = ['kinds', k, 'firstFruit'];
    if ('earliest' in firstFruit) {
      const [e, m, t] = [meanOf(firstFruit.earliest), meanOf(firstFruit.half), meanOf(firstFruit.ninety)];
      if (e > m) return [stop([...path, 'half'], '“Half by” must not come before “earliest”', 'Put the three seasons in order.')];
      if (m >= t) return [stop([...path, 'ninety'], '“9 in 10 by” must come after “half by”', 'Put the three seasons in order.')];
    }
    const depth = depths.get(id) ?? 0;
    if (depth === Infinity) return [stop(path, `${name} follows a kind that follows ${name} itself`, 'Give one of them seasons of its own.')];
    if (depth > MOST_FOLLOWED)
      return [
        stop(
          path,
          `${name} follows kinds that follow others, more than ${String(MOST_FOLLOWED)} deep`,
          `Give ${name}, or one that it follows, seasons of its own.`,
        ),
      ];
    return [];
  });
}

/** How deep the seasons of each kind rest on those of others: 0 with seasons of its own, Infinity in a circle. */
function depthsOf({ kinds }: Programme): ReadonlyMap<string, number> {
  const depths = new Map<string, number>();
  const depthOf = (id: string): number => {
    const known = depths.get(id);
    if (known !== undefined) return known;
    const fruit: FirstFruit | undefined = kinds.find((kind) => kind.id === id)?.firstFruit;
    // Met again before it is done: a circle.
    depths.set(id, Infinity);
    const depth = fruit && 'between' in fruit ? 1 + Math.max(depthOf(fruit.between.seed), depthOf(fruit.between.pollen)) : 0;
    depths.set(id, depth);
    return depth;
  };
  kinds.forEach(({ id }) => depthOf(id));
  return depths;
}

const genesOf = ({ needs }: Rule) => (needs.needs === 'total' ? needs.genes : needs.of.map(({ gene }) => gene));

function rules(programme: Programme): Problem[] {
  const sets = Math.max(...programme.kinds.map(setsOf));
  return programme.traits.flatMap((trait, t) =>
    trait.type === 'measured'
      ? []
      : trait.rules.flatMap((rule, r) =>
          rule.needs.needs === 'total' && rule.needs.copies > sets * rule.needs.genes.length
            ? [
                stop(
                  ['traits', t, 'rules', r, 'needs', 'copies'],
                  `${String(rule.needs.copies)} copies cannot be had from ${String(rule.needs.genes.length)} genes`,
                  `Ask for at most ${String(sets * rule.needs.genes.length)}.`,
                ),
              ]
            : [],
        ),
  );
}

function measured(programme: Programme): Problem[] {
  return programme.traits.flatMap((trait, t) => {
    if (trait.type === 'shown') return [];
    const genetic = meanOf(trait.heritability) * meanOf(trait.sd) ** 2;
    /** Half of all copies, each worth √(4·V_G/(sets·32)). */
    const reachOf = (sets: number) => 16 * sets * Math.sqrt(genetic / (8 * sets));
    const beyond = trait.genes.reduce((sum, { half }) => sum + Math.abs(half), 0) + meanOf(trait.inbreeding);
    const problems: Problem[] = [];
    if (meanOf(trait.repeatability) < meanOf(trait.heritability))
      problems.push(note(['traits', t, 'repeatability'], 'Repeatability cannot be below heritability', 'It is taken as equal to it.'));
    programme.trees.forEach((tree, i) => {
      const value = tree.values[trait.id];
      const reach = reachOf(setsOfTree(programme, tree));
      if (value !== undefined && Math.abs(meanOf(value) - trait.mean) > reach + beyond)
        problems.push(
          note(
            ['trees', i, 'values', trait.id],
            `${tree.name} is out of reach of the scale of ${trait.name} (${scale(trait.mean - reach)} to ${scale(trait.mean + reach)})`,
            'The nearest end is taken; raise the spread or the heritability if the value is sure.',
          ),
        );
    });
    return problems;
  });
}

const scale = (value: number) => String(Math.round(value * 10) / 10);

function weakness(programme: Programme): Problem[] {
  return programme.crosses.flatMap((cross, c) => {
    const { weakness: weak } = cross;
    if (!weak || !('alive' in weak.course)) return [];
    const kind = programme.kinds.find(({ id }) => id === cross.gives);
    if (!kind) return [];
    const { alive, atYears } = weak.course;
    const ordinary = (1 - meanOf(kind.firstYearLoss)) * (1 - meanOf(kind.yearlyLoss)) ** Math.max(0, atYears - 1);
    const share = meanOf(weak.share);
    const path = ['crosses', c, 'weakness', 'course', 'alive'];
    if (12 * atYears <= meanOf(weak.onset))
      return [stop(['crosses', c, 'weakness', 'course', 'atYears'], 'was counted before the weakness shows', 'Count later, or let it show sooner.')];
    if (meanOf(alive) > ordinary)
      return [stop(path, `More were alive than ordinary losses leave (${percent(ordinary)})`, 'Lower the ordinary losses of the kind, or the count.')];
    if (meanOf(alive) < ordinary * (1 - share))
      return [stop(path, `Fewer were alive than the sound ones alone (${percent(ordinary * (1 - share))})`, 'Raise the weak share, or the ordinary losses.')];
    return [];
  });
}

const percent = (value: number) => `${String(Math.round(value * 100))} %`;

function seeds(programme: Programme): Problem[] {
  return programme.crosses.flatMap((cross, c) => {
    const kind = programme.kinds.find(({ id }) => id === cross.seed);
    const mean = meanOf(cross.seedsPerFruit ?? kind?.seedsPerFruit ?? 1);
    const most = cross.seedsAtMost ?? kind?.seedsAtMost ?? 1;
    if (most === 1 ? mean <= 1 : mean < most) return [];
    return [
      stop(['crosses', c, 'seedsPerFruit'], `A mean of ${scale(mean)} seeds cannot be had with at most ${String(most)}`, 'Raise “at most”, or lower the mean.'),
    ];
  });
}

/** Homologues of a tree. */
const setsOfTree = ({ kinds }: Programme, tree: Programme['trees'][number]): number => {
  const kind = kinds.find(({ id }) => id === tree.kind);
  return kind ? setsOf(kind) : 2;
};

function founders(programme: Programme): Problem[] {
  return programme.trees.flatMap((tree, i) =>
    Object.entries(tree.seen).flatMap(([traitId, seen]) => {
      const trait = programme.traits.find(({ id }) => id === traitId);
      const path = ['trees', i, 'seen', traitId];
      if (trait?.type !== 'shown') return [];
      if ('showed' in seen && seen.showed > seen.seasons)
        return [stop([...path, 'showed'], 'It cannot have shown in more seasons than it was watched', 'Put the two in order.')];
      const unknown = new Set(trait.rules.flatMap(genesOf).filter((gene) => 'frequency' in (tree.genes[gene] ?? { copies: 0 })));
      const sets = setsOfTree(programme, tree);
      const most = mostWeighedGenes(sets);
      if (unknown.size > most)
        return [stop(path, `rests on ${String(unknown.size)} unknown genes`, `At most ${String(most)} can be weighed; state some of them.`)];
      return 'source' in seen
        ? trait.rules.flatMap((rule) =>
            canQualify(tree.genes, rule, sets)
              ? []
              : [
                  stop(
                    path,
                    `${tree.name} is the source of ${trait.name}, but cannot carry it if “${rule.name}”`,
                    'Leave its copies unknown (with a frequency), or drop that rule.',
                  ),
                ],
          )
        : [];
    }),
  );
}

/** Whether some genotype that the tree may have qualifies. */
function canQualify(genes: Programme['trees'][number]['genes'], { needs }: Rule, sets: number): boolean {
  const most = (gene: string) => {
    const state = genes[gene] ?? { copies: 0 };
    return 'copies' in state ? state.copies : meanOf(state.frequency) > 0 ? sets : 0;
  };
  if (needs.needs === 'total') return needs.genes.reduce((sum, gene) => sum + most(gene), 0) >= needs.copies;
  const fits = ({ gene, copies }: { readonly gene: string; readonly copies: number }) => most(gene) >= copies;
  return needs.needs === 'all' ? needs.of.every(fits) : needs.of.some(fits);
}
