import type { Estimate } from '../model/estimate.ts';
import { learnGrid, shareAxis, type Axis } from '../statistics/learn-grid.ts';
import { logSum, normalised, type Belief } from '../statistics/weighed.ts';
import { shareDensity } from './priors.ts';
import type { Stretch } from './stretch.ts';
import { wintersOf } from './survival-facts.ts';

/** A winter in which many died at once, after years that went well. */
export interface LateWave {
  /** Which winter of a seedling's life. */
  readonly winter: number;
  /** Chance that there was such a wave in that winter at all. */
  readonly chance: number;
  /** Share of the trees that it took, beyond ordinary losses, if there was one. */
  readonly took: number;
}

export interface LearnedLosses {
  readonly first: Belief;
  readonly later: Belief;
  /** The likeliest wave; undefined where no winter after the first was counted alone. */
  readonly wave: LateWave | undefined;
}

/** Belief beforehand that some winter brings a wave. Own choice: possible, not expected. */
const WAVE_BEFORE = 0.2;
/** A wave counts as one from this chance on; then the later losses are learned beside it, not with it. */
export const WAVE_FROM = 0.5;
/** Shares that a wave may take: even over 0 … 1. */
const WAVE_SIZES = Array.from({ length: 20 }, (_, i) => (i + 0.5) / 20);
/** Points of the rough look with which the winters are told apart. */
const ROUGH = 30;

type Winters = ReturnType<typeof wintersOf> & { readonly atRisk: number; readonly alive: number };

function logLikelihood(stretches: readonly Winters[], first: number, later: number, wave?: { winter: number; took: number }): number {
  return stretches.reduce((sum, stretch) => {
    const hit = wave !== undefined && stretch.later.includes(wave.winter);
    const left = (stretch.first ? 1 - first : 1) * (1 - later) ** stretch.later.length * (hit ? 1 - wave.took : 1);
    const died = stretch.atRisk - stretch.alive;
    return sum + stretch.alive * Math.log(left) + (died > 0 ? died * Math.log1p(-left) : 0);
  }, 0);
}

const points = ({ from, to, value, logPrior }: Axis): { value: number; log: number }[] =>
  Array.from({ length: ROUGH }, (_, i) => from + ((i + 0.5) * (to - from)) / ROUGH).map((at) => ({ value: value(at), log: logPrior(at) }));

/**
 * Returns belief about the losses of the first and of each later winter, with one optional winter in which a wave took a share of its own.
 * Deaths of a stretch are binomial. Stretches without a winter say nothing here.
 *
 * **Source:** discrete survival by stretches as in Kalbfleisch & Prentice (2002) ch. 2; own derivation of the wave.
 */
export function learnLosses(
  stretches: readonly Stretch[],
  kind: { readonly firstYearLoss: Estimate; readonly yearlyLoss: Estimate },
): LearnedLosses | undefined {
  const seen = stretches.flatMap((one): Winters[] => {
    const winters = wintersOf(one);
    return winters.first || winters.later.length > 0 ? [{ ...winters, atRisk: one.atRisk, alive: one.alive }] : [];
  });
  if (seen.length === 0) return undefined;
  const axes = [shareAxis(shareDensity(kind.firstYearLoss)), shareAxis(shareDensity(kind.yearlyLoss))] as const;
  const wave = likeliestWave(seen, axes);
  const taken = wave && wave.chance >= WAVE_FROM ? wave : undefined;
  // With a wave that most likely was one, its size is weighed out point by point.
  const sizes = taken ? WAVE_SIZES : [];
  const [first, later] = learnGrid(axes, ([a = 0, b = 0]) =>
    taken ? logSum(sizes.map((took) => logLikelihood(seen, a, b, { winter: taken.winter, took }))) : logLikelihood(seen, a, b),
  );
  return first && later && { first, later, wave };
}

function likeliestWave(seen: readonly Winters[], axes: readonly [Axis, Axis]): LateWave | undefined {
  const winters = [...new Set(seen.flatMap(({ later }) => later))].sort((a, b) => a - b);
  // With one winter alone a wave and an ordinary loss are the same thing.
  if (winters.length < 2) return undefined;
  const [firsts, laters] = [points(axes[0]), points(axes[1])];
  const evidence = (wave?: { winter: number; took: number }): number =>
    logSum(firsts.flatMap((a) => laters.map((b) => a.log + b.log + logLikelihood(seen, a.value, b.value, wave))));
  const none = Math.log(1 - WAVE_BEFORE) + evidence();
  const bySize = winters.map((winter) => WAVE_SIZES.map((took) => Math.log(WAVE_BEFORE / winters.length / WAVE_SIZES.length) + evidence({ winter, took })));
  const chances = normalised([none, ...bySize.map(logSum)]);
  const best = chances.slice(1).reduce((most, chance, i) => (chance > (chances[most + 1] ?? 0) ? i : most), 0);
  const sizes = normalised(bySize[best] ?? []);
  return { winter: winters[best] ?? 0, chance: chances[best + 1] ?? 0, took: sizes.reduce((sum, weight, i) => sum + weight * (WAVE_SIZES[i] ?? 0), 0) };
}
