import { exp, log, wholePower } from '../random/elementary.ts';
import { mix2 } from '../random/mix.ts';
import type { Stream } from '../random/stream.ts';
import { Breeding } from './breeding.ts';
import type { Compiled } from './compiled.ts';
import type { Facts } from './facts.ts';
import { DOMAIN, FACT } from './keys.ts';
import type { Stand } from './stand.ts';
import type { CompiledBearing } from './today.ts';

/** Genotypes drawn for the founding parents of families that were looked at; one is taken, by how well it fits what they showed. */
const ATTEMPTS = 24;
/** Seedlings bred to find what share of a family qualifies; reckoned once for each pair of genotypes. */
const BRED = 2048;

interface Seedlot {
  readonly mother: number;
  readonly father: number;
  /** Kind of the seedlings. */
  readonly kind: number;
  readonly trees: readonly CompiledBearing[];
}

/**
 * Founding trees with unknown genes, given what their logged seedlings showed: several draws under the future's rules and estimates, one
 * taken with a chance in proportion to the likelihood of what the families of two founding trees showed. Rules and estimates themselves stay
 * as the document states them. **Source:** as in today-trees.ts.
 */
export class FoundersToday {
  private readonly lots: readonly Seedlot[];
  private readonly unknown: readonly number[];
  private readonly shares = new Map<string, number>();
  private readonly weights = new Float64Array(ATTEMPTS);
  private readonly breeding: Breeding;

  /** @param stream of its own: what a family would show does not depend on the future that asks first */
  constructor(
    private readonly compiled: Compiled,
    private readonly facts: Facts,
    private readonly stand: Stand,
    private readonly stream: Stream,
  ) {
    this.breeding = new Breeding(compiled, stand);
    this.lots = lotsOf(compiled);
    const parents = new Set(this.lots.flatMap(({ mother, father }) => [mother, father]));
    this.unknown = [...parents].filter((handle) => compiled.trees[handle]!.copiesOf.includes(-1));
  }

  /** After the facts of a future are drawn, before anything uses them. */
  condition(): void {
    if (this.unknown.length === 0 || this.lots.length === 0) return;
    // Nothing stands yet: the scratch genome of the first individual is free.
    this.stand.clear();
    let most = -Infinity;
    for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
      if (attempt > 0) this.facts.redraw(this.unknown, attempt);
      this.weights[attempt] = this.fit();
      most = Math.max(most, this.weights[attempt]!);
    }
    let total = 0;
    for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
      this.weights[attempt] = exp(Math.max(-700, this.weights[attempt]! - most));
      total += this.weights[attempt]!;
    }
    let left = this.facts.uniform(mix2(FACT.founder, 1)) * total;
    let chosen = 0;
    while (chosen < ATTEMPTS - 1 && (left -= this.weights[chosen]!) >= 0) chosen += 1;
    this.facts.redraw(this.unknown, chosen);
  }

  /** Log likelihood of what all families showed, given the founding trees as they are drawn now. */
  private fit(): number {
    const { compiled, facts } = this;
    const { values } = facts;
    let sum = 0;
    for (const { mother, father, kind, trees } of this.lots)
      for (let t = 0; t < compiled.shown.length; t += 1) {
        if (!trees.some(({ looks }) => looks[t]! > 0)) continue;
        const trait = compiled.shown[t]!;
        const able = this.shareOf(mother, father, kind, t) * values[trait.canShowAt]!;
        for (const { looks, shows } of trees) {
          if (looks[t] === 0) continue;
          const seen = (rate: number) => wholePower(rate, shows[t]!) * wholePower(1 - rate, looks[t]! - shows[t]!);
          const chance = able * seen(values[trait.seasonsAt]!) + (1 - able) * seen(values[trait.falseShowAt]!);
          sum += chance > 1e-300 ? log(chance) : -690;
        }
      }
    return sum;
  }

  /** Share of the seedlings of two founding trees that qualify under the future's rule. */
  private shareOf(mother: number, father: number, kind: number, t: number): number {
    const { compiled, facts, stand } = this;
    const { words, sets } = compiled;
    const rule = facts.ruleOf[t]!;
    const genes = (handle: number) => Array.from({ length: sets }, (_, h) => stand.genome[stand.offset(handle) + h * words]!).join(',');
    const key = `${String(t)}/${String(rule)}/${String(mother)} ${genes(mother)}/${String(father)} ${genes(father)}`;
    const known = this.shares.get(key);
    if (known !== undefined) return known;
    const child = stand.handleOf(0);
    this.stream.future(DOMAIN.today, 0).key(mix2(mix2(t, rule), mix2(mother, father)));
    let found = 0;
    for (let n = 0; n < BRED; n += 1) {
      this.breeding.child(mother, father, child, kind, this.stream);
      if (stand.qualifies(compiled.shown[t]!.rules[rule]!, child)) found += 1;
    }
    const share = found / BRED;
    if (this.shares.size > 20_000) this.shares.clear();
    this.shares.set(key, share);
    return share;
  }
}

/** Families of two founding trees of which some tree was looked at, each once whatever plans it stands in. */
function lotsOf({ today, crosses }: Compiled): Seedlot[] {
  const lots = new Map<string, Seedlot>();
  const seen = new Set<number>();
  for (const plan of today?.plans ?? []) {
    const fresh = plan.trees.filter(({ key, looks }) => looks.some((n) => n > 0) && !seen.has(key));
    for (const tree of fresh) {
      const { mother, father, cross } = plan.families[tree.family]!;
      if (mother.tree < 0 || !father || father.tree < 0) continue;
      seen.add(tree.key);
      const name = `${String(mother.tree)}/${String(father.tree)}`;
      lots.set(name, { mother: mother.tree, father: father.tree, kind: crosses[cross]!.gives, trees: [...(lots.get(name)?.trees ?? []), tree] });
    }
  }
  return [...lots.values()];
}
