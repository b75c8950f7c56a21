import type { LoggedTree } from '../model/log.ts';
import type { Programme, ShownTrait } from '../model/programme.ts';
import { beliefs as weightsOf, rulingOf } from '../genetics/tray/rulings.ts';
import { normalised } from '../statistics/weighed.ts';
import type { LeftOut } from './batches.ts';
import { candidatesOf, withAnotherGene, type CandidateKey } from './candidates.ts';
import { lookedFamilies, type LookedFamily } from './families.ts';
import type { Put } from './learned-types.ts';
import { fitRule, type RuleFit } from './rule-fit.ts';
import { showings } from './showing.ts';
import { SETTLED, whatSettles, type Settling } from './settle.ts';

/** One of the programme's rules before and after. */
export interface WeighedRule {
  readonly name: string;
  /** Before these counts, whatever the programme says by now. */
  readonly before: number;
  readonly after: number;
  /** How many times better than the best of the other rules it tells what was seen, whatever was believed before. */
  readonly factor: number;
}

/** A further explanation against the rule of the programme that tells best what was seen. */
export interface FurtherRule {
  readonly key: CandidateKey;
  readonly factor: number;
}

/** A tree that does not show it, and the chance that it carries the wanted gene. */
export interface Loser {
  readonly batch: string;
  readonly batchName: string;
  readonly tag: string;
  readonly place: LoggedTree['place'];
  readonly showed: number;
  readonly seasons: number;
  readonly status: 'alive' | 'dead' | 'culled' | 'labelLost';
  readonly carries: number;
}

export interface LearnedInheritance {
  readonly trait: string;
  readonly name: string;
  /** Families looked at: trees that showed it at least once, of those looked at. */
  readonly families: readonly { readonly batch: string; readonly name: string; readonly showed: number; readonly of: number }[];
  readonly rules: readonly WeighedRule[];
  readonly further: readonly FurtherRule[];
  /** One rule stands at nine to one or better. */
  readonly settled: boolean;
  /** What would settle it; null where it is settled, or there is one rule alone. */
  readonly settling: Settling | null;
  /** The programme has its weights from these counts already; then they were not weighed twice. */
  readonly used: boolean;
  /** New weights, for one click, with those from before kept beside them. */
  readonly puts: readonly Put[];
  /** The weights from before the counts, where the programme has any from counts. */
  readonly backs: readonly Put[];
  /** Trees that stand and did not show it, likeliest carriers first. */
  readonly losers: readonly Loser[];
  readonly leftOut: readonly LeftOut[];
}

/** Weights go into the document in parts of this, so that they read as numbers. */
const WHOLE = 100;
const SMALLEST_WEIGHT = 0.001;
/** Weights are put with three digits: a belief as near as this is the one that was put there. */
const SAME = 0.002;

/** Weighs the rules of every shown-or-not trait that logged trees were looked at for. */
export function learnInheritance(programme: Programme): LearnedInheritance[] {
  return programme.traits.flatMap((trait, at) => (trait.type === 'shown' ? (learnTrait(programme, trait, at) ?? []) : []));
}

function learnTrait(programme: Programme, trait: ShownTrait, at: number): LearnedInheritance | undefined {
  const { families: looked, leftOut } = lookedFamilies(programme, trait);
  if (looked.length === 0) return undefined;
  const ways = showings(
    trait,
    yearsOf(looked, trait.id),
    looked.some(({ stray }) => stray > 0),
  );
  const usual = usualSeasons(looked);
  const own = trait.rules.map((_, rule) => fitRule(programme, rulingOf(trait, rule), looked, ways, usual));
  const before = weightsOf(beforeWeighing(trait));
  const after = normalised(own.map(({ evidence }, r) => evidence + Math.log(before[r] ?? 0)));
  const unknown = new Set(own[0]?.unknown ?? []);
  const wide = withAnotherGene(programme);
  const best = Math.max(...own.map(({ evidence }) => evidence));
  const [first] = trait.rules;
  const further = candidatesOf(trait).flatMap(({ key, needs }): FurtherRule[] => {
    if (!first) return [];
    const ruling = rulingOf({ ...trait, rules: [{ ...first, needs }] }, 0);
    return [{ key, factor: Math.exp(fitRule(wide, ruling, looked, ways, usual).evidence - best) }];
  });
  const rules = trait.rules.map(({ name }, r): WeighedRule => {
    const others = own.flatMap(({ evidence }, other) => (other === r ? [] : [evidence]));
    return { name, before: before[r] ?? 0, after: after[r] ?? 0, factor: others.length === 0 ? 1 : Math.exp((own[r]?.evidence ?? 0) - Math.max(...others)) };
  });
  return {
    trait: trait.id,
    name: trait.name,
    families: looked.map(({ batch, trees }) => ({
      batch: batch.id,
      name: batch.name,
      showed: trees.filter(({ record }) => record.showed > 0).length,
      of: trees.length,
    })),
    rules,
    further: further.sort((a, b) => b.factor - a.factor),
    settled: Math.max(...after) >= SETTLED,
    settling: whatSettles(
      after,
      own.map(({ families }) => families),
    ),
    ...editsOf(trait, at, after),
    losers: losersOf(looked, own, after),
    leftOut: [
      ...leftOut,
      ...looked.flatMap(({ batch }) =>
        unknown.has(batch.id) ? [{ batch: batch.id, name: batch.name, why: 'unknownParents' as const, about: trait.name }] : [],
      ),
    ],
  };
}

/** The trait with the weights that its rules had before counts set them. */
const beforeWeighing = (trait: ShownTrait): ShownTrait => ({
  ...trait,
  rules: trait.rules.map((rule) => ({ ...rule, weight: rule.weightBefore ?? rule.weight })),
});

function editsOf(trait: ShownTrait, at: number, after: readonly number[]): Pick<LearnedInheritance, 'used' | 'puts' | 'backs'> {
  const { rules } = trait;
  if (rules.length < 2) return { used: false, puts: [], backs: [] };
  const path = (rule: number, key: 'weight' | 'weightBefore') => ['traits', at, 'rules', rule, key];
  const now = weightsOf(trait);
  return {
    used: rules.every(({ weightBefore }, r) => weightBefore !== undefined && Math.abs((now[r] ?? 0) - (after[r] ?? 0)) < SAME),
    puts: rules.flatMap(({ weight, weightBefore }, r) => [
      { path: path(r, 'weight'), value: Math.max(SMALLEST_WEIGHT, Number(((after[r] ?? 0) * WHOLE).toPrecision(3))) },
      ...(weightBefore === undefined ? [{ path: path(r, 'weightBefore'), value: weight }] : []),
    ]),
    backs: rules.flatMap(({ weightBefore }, r) =>
      weightBefore === undefined
        ? []
        : [
            { path: path(r, 'weight'), value: weightBefore },
            { path: path(r, 'weightBefore'), value: undefined },
          ],
    ),
  };
}

/** Distinct seasons in which trees were looked at for a trait. */
const yearsOf = (looked: readonly LookedFamily[], trait: string): number =>
  new Set(looked.flatMap(({ trees }) => trees.flatMap(({ tree }) => tree.seasons.flatMap(({ year, seen }) => (seen[trait] ? [year] : []))))).size;

/** The middle number of seasons that trees were looked at for. */
function usualSeasons(looked: readonly LookedFamily[]): number {
  const seasons = looked.flatMap(({ trees }) => trees.map(({ record }) => record.seasons)).sort((a, b) => a - b);
  return seasons[Math.floor(seasons.length / 2)] ?? 1;
}

function losersOf(looked: readonly LookedFamily[], fits: readonly RuleFit[], beliefs: readonly number[]): Loser[] {
  const losers = looked.flatMap(({ batch, trees }) =>
    trees.flatMap(({ tree, record }): Loser[] => {
      if (record.showed > 0 || tree.status === 'dead') return [];
      const known = fits.map((fit) =>
        fit.families.find((one) => one.batch === batch.id)?.carries.find((one) => one.showed === record.showed && one.seasons === record.seasons),
      );
      if (known.some((one) => one === undefined)) return [];
      const carries = known.reduce((sum, one, r) => sum + (beliefs[r] ?? 0) * (one?.chance ?? 0), 0);
      return [{ batch: batch.id, batchName: batch.name, tag: tree.tag, place: tree.place, ...record, status: tree.status, carries }];
    }),
  );
  return losers.sort((a, b) => b.carries - a.carries || a.tag.localeCompare(b.tag, 'en'));
}
