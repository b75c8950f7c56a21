import { exp, log } from '../random/elementary.ts';
import { betaCdf, betaPdf } from './beta.ts';
import { logGamma } from './gamma.ts';
import { expm1, log1p } from './near-zero.ts';
import { beliefOf, cells, logSum, normalised, type Belief } from './weighed.ts';

/** One count of one spring and pair. */
export interface Lot {
  readonly hits: number;
  /** Whole, at least `hits`. */
  readonly of: number;
  /** Flowers in the unit counted, 1 if it is the flower: a unit succeeds if any of its flowers does. */
  readonly flowers?: number;
  /** What the rate is multiplied with in this lot (fertility of a hybrid parent); 1 if nothing. */
  readonly times?: number;
}

/** Density of a share on (0, 1), in any unit. */
export type PriorDensity = (share: number) => number;

/** How alike all trials of one spring and pair are. */
export interface BetweenSprings {
  /** Mean of the intraclass correlation ρ, in (0, 1). */
  readonly mean: number;
  /** Total weight of its beta; Infinity: ρ is known. */
  readonly weight: number;
}

export interface LearnedShare extends Belief {
  /** How alike one spring's trials look, ρ; undefined where that was not asked. */
  readonly luck: Belief | undefined;
  /** ln of the chance of the lots at each ρ looked at, up to a constant: lots of other pairs can be added to it. */
  readonly luckEvidence: readonly number[];
  /** The rate of another spring: 1 in 10 lies below `low`, 1 in 10 above `high`. The long-run rate itself where ρ was not asked. */
  readonly nextSpring: () => { readonly low: number; readonly high: number };
}

/** Logits beyond which a share is as good as 0 or 1 for any count that a hand can make. */
const FARTHEST = 14;
const COARSE = 120;
const FINE = 200;
const LUCK_NODES = 36;
/** Logits of ρ looked at, 0.0002 … 0.95: the same for every prior, so that evidence of several rates can be added. */
const LUCK_FROM = -8.5;
const LUCK_TO = 3;
/** Weights e⁻⁴⁰ of the highest are paper only. */
const NEGLIGIBLE = 40;

const share = (logit: number): number => 1 / (1 + exp(-logit));

/** Chance of success of one unit, kept off 0 and 1. */
function unitChance(rate: number, { flowers = 1, times = 1 }: Lot): number {
  const flower = Math.min(1 - 1e-12, rate * times);
  const unit = flowers === 1 ? flower : -expm1(flowers * log1p(-flower));
  return Math.min(1 - 1e-12, Math.max(1e-300, unit));
}

/** ln of the beta-binomial chance, or the binomial one for size = Infinity; the number of orders, the same for all rates, is left out. */
function logChance(lot: Lot, rate: number, size: number): number {
  const p = unitChance(rate, lot);
  const { hits, of } = lot;
  if (size === Infinity) return (hits > 0 ? hits * log(p) : 0) + (of > hits ? (of - hits) * log1p(-p) : 0);
  const [a, b] = [p * size, (1 - p) * size];
  return logGamma(hits + a) - logGamma(a) + logGamma(of - hits + b) - logGamma(b) + logGamma(size) - logGamma(of + size);
}

interface LuckNode {
  readonly rho: number;
  /** a + b of the beta between springs, 1/ρ − 1. */
  readonly size: number;
  readonly log: number;
}

function luckNodes(between: BetweenSprings | null): { readonly nodes: readonly LuckNode[]; readonly borders: readonly number[] } {
  if (between === null || between.mean <= 0) return { nodes: [{ rho: 0, size: Infinity, log: 0 }], borders: [0, 0] };
  const { mean, weight } = between;
  if (weight === Infinity) return { nodes: [{ rho: mean, size: 1 / mean - 1, log: 0 }], borders: [mean, mean] };
  const [a, b] = [mean * weight, (1 - mean) * weight];
  const { values, borders } = cells(LUCK_FROM, LUCK_TO, LUCK_NODES);
  const nodes = values.map((at) => {
    const rho = share(at);
    return { rho, size: 1 / rho - 1, log: log(betaPdf(rho, a, b) * rho * (1 - rho)) };
  });
  return { nodes, borders: borders.map(share) };
}

/** Lots that are the same are looked at once. */
function grouped(lots: readonly Lot[]): { readonly lot: Lot; readonly times: number }[] {
  const found = new Map<string, { lot: Lot; times: number }>();
  for (const lot of lots) {
    const key = [lot.hits, lot.of, lot.flowers ?? 1, lot.times ?? 1].join(' ');
    const entry = found.get(key);
    if (entry) entry.times += 1;
    else found.set(key, { lot, times: 1 });
  }
  return [...found.values()];
}

/**
 * Returns what counts say of a share that varies between springs, by quadrature over its long-run mean (a grid of logits) and over ρ, the
 * intraclass correlation of one spring: lots are beta-binomial with mean m and a + b = 1/ρ − 1, so however many flowers one spring had, it
 * narrows the mean to no less than about √(ρ·m(1 − m)).
 * @param lots one for each spring and pair; none gives the prior back
 * @param prior density of the mean, positive somewhere in (e⁻¹⁴, 1 − e⁻¹⁴)
 * @param between null: springs are alike, lots are binomial
 *
 * **Source:** beta-binomial of Skellam (1948) J. R. Stat. Soc. B 10:257–261; ρ = 1/(a + b + 1) as in Williams (1975) Biometrics 31:949–952.
 */
export function learnShare(lots: readonly Lot[], prior: PriorDensity, between: BetweenSprings | null): LearnedShare {
  const { nodes, borders: luckBorders } = luckNodes(between);
  const groups = grouped(lots);
  const rowAt = (at: number): number[] => {
    const rate = share(at);
    const density = prior(rate) * rate * (1 - rate);
    if (!(density > 0)) return nodes.map(() => -Infinity);
    const start = log(density);
    return nodes.map((node) => groups.reduce((sum, { lot, times }) => sum + times * logChance(lot, rate, node.size), start + node.log));
  };
  const first = cells(-FARTHEST, FARTHEST, COARSE);
  const rough = first.values.map((at) => logSum(rowAt(at)));
  const most = Math.max(...rough);
  const kept = rough.flatMap((one, i) => (one > most - NEGLIGIBLE ? [i] : []));
  const from = first.borders[Math.max(0, (kept[0] ?? 0) - 1)] ?? -FARTHEST;
  const to = first.borders[Math.min(COARSE, (kept[kept.length - 1] ?? COARSE) + 2)] ?? FARTHEST;
  const { values, borders } = cells(from, to, FINE);
  const rows = values.map(rowAt);
  const joint = normalised(rows.flat());
  const width = nodes.length;
  const weights = values.map((_, i) => joint.slice(i * width, (i + 1) * width).reduce((sum, one) => sum + one, 0));
  const rates = values.map(share);
  const belief = beliefOf({ values: rates, borders: borders.map(share), weights });
  const asked = width > 1;
  const luck = asked
    ? beliefOf({ values: nodes.map(({ rho }) => rho), borders: luckBorders, weights: nodes.map((_, j) => columnSum(joint, j, width)) })
    : undefined;
  const luckEvidence = nodes.map((node, j) => logSum(rows.map((row) => row[j] ?? -Infinity)) - node.log);
  const nextSpring = () => (nodes[0]?.size === Infinity ? { low: belief.low, high: belief.high } : anotherSpring(rates, nodes, joint));
  return { ...belief, luck, luckEvidence, nextSpring };
}

/**
 * Returns belief about ρ from the lots of several rates, each with a mean of its own.
 * @param learned by `learnShare` with any prior of ρ, but not with a known one
 */
export function pooledLuck(learned: readonly Pick<LearnedShare, 'luckEvidence'>[], between: BetweenSprings): Belief {
  const { nodes, borders } = luckNodes(between);
  const weights = normalised(nodes.map((node, j) => learned.reduce((sum, { luckEvidence }) => sum + (luckEvidence[j] ?? 0), node.log)));
  return beliefOf({ values: nodes.map(({ rho }) => rho), borders, weights });
}

const columnSum = (joint: readonly number[], column: number, width: number): number =>
  joint.reduce((sum, one, i) => (i % width === column ? sum + one : sum), 0);

/** Cells taken together for the mixture of betas: it is smooth, and its ends need no more. */
const TOGETHER = 3;

function anotherSpring(rates: readonly number[], nodes: readonly LuckNode[], joint: readonly number[]): { low: number; high: number } {
  const mixture: { a: number; b: number; weight: number }[] = [];
  for (let i = 0; i < rates.length; i += TOGETHER)
    nodes.forEach(({ size }, j) => {
      let [weight, sum] = [0, 0];
      for (let k = i; k < Math.min(rates.length, i + TOGETHER); k += 1) {
        const here = joint[k * nodes.length + j] ?? 0;
        weight += here;
        sum += here * (rates[k] ?? 0);
      }
      if (weight > 1e-5) mixture.push({ a: (sum / weight) * size, b: (1 - sum / weight) * size, weight });
    });
  const total = mixture.reduce((sum, { weight }) => sum + weight, 0);
  const below = (p: number): number => mixture.reduce((sum, { a, b, weight }) => sum + weight * betaCdf(p, a, b), 0) / total;
  const at = (u: number): number => {
    let [low, high] = [0, 1];
    for (let round = 0; round < 22; round += 1) {
      const middle = (low + high) / 2;
      if (below(middle) < u) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  return { low: at(0.1), high: at(0.9) };
}
