import type { Programme } from '../../model/programme.ts';
import { textKey } from '../../random/mix.ts';
import { rootOf, Stream } from '../../random/stream.ts';
import { ranking } from '../../statistics/fronts.ts';
import type { Futures } from '../futures.ts';
import { runOne } from '../steps.ts';
import { AS_IT_STANDS, candidate, keyOf, type Candidate, type Start } from './candidate.ts';
import { allowed, seenMore, surelyOver, unseen, type Look } from './look.ts';

/** Futures after which half of a wave is left behind; all candidates live through the same ones. */
export const STEPS = [100, 200, 400, 800] as const;
/** So many of a wave go on at least: a front has many points. */
const GO_ON = 4;
/** Candidates that new ones are bred from. */
const PARENTS = 12;
const WAVES = 6;
/** Share of the looks that is kept for the last wave: the best with one of their changes taken back, so that nothing is changed in vain. */
const SIMPLER = 0.12;
/** Tries at a candidate that was not looked at yet. */
const TRIES = 80;
/** Of newcomers, the shares that start anew from one of the user's plans, and that mix two good ones. */
const RESTARTS = 0.15;
const MIXED = 0.3;
/** Of those that change a good one, the share that changes one thing only. */
const SINGLE = 0.7;

export interface Searched {
  /** Candidates looked at so far, the user's own plans included. */
  readonly looked: number;
  /** Those that went through all steps, the user's plans first, then in the order in which they were found. */
  readonly deep: readonly Look[];
  /** Futures run so far. */
  readonly futures: number;
}

/**
 * Looks for good plans among the choices of all the user's plans, in waves. In each wave new candidates are made from the best so far, and
 * half of those left drop out after each step of futures (successive halving on common futures), by non-dominated sorting on the mean year
 * and the mean number of trees. Everything random is keyed by the shuffle word, so the same programme finds the same plans.
 * @param looks how many candidates to look at, the user's plans included
 * @param report told after each wave
 *
 * **Source:** Karnin, Z., Koren, T. & Somekh, O. (2013) ICML, sequential halving; Jamieson, K. & Talwalkar, A. (2016) AISTATS; fronts and
 * limits first: Deb et al. (2002) IEEE Trans. Evol. Comput. 6:182–197 (from memory).
 */
export async function search(
  programme: Programme,
  starts: readonly Start[],
  looks: number,
  futures: Futures,
  report: (soFar: Searched) => void,
): Promise<Searched> {
  const known = new Set<string>();
  const fresh = (one: Candidate | null): one is Candidate => one !== null && !known.has(keyOf(one)) && known.add(keyOf(one)).size > 0;
  const own = starts.flatMap((start, s) => {
    const stands = candidate(
      programme,
      starts,
      s,
      start.choices.map(() => AS_IT_STANDS),
    );
    return fresh(stands) ? stands : [];
  });
  let spent = 0;
  const runMore = async (look: Look, upTo: number) => {
    spent += upTo - look.futures;
    return seenMore(look, await runOne(futures, { programme: look.candidate.programme, plan: 0 }, look.futures, upTo - look.futures));
  };
  const allSteps = async (one: Candidate) => {
    let seen = unseen(one);
    for (const step of STEPS) seen = await runMore(seen, step);
    return seen;
  };
  let deep: readonly Look[] = await Promise.all(own.map(allSteps));
  let looked = own.length;
  const parents = () =>
    ranked(deep.filter(allowed), STEPS.length - 1)
      .slice(0, PARENTS)
      .map((look) => look.candidate);
  const told = () => report({ looked, deep, futures: spent });
  const bred = looks - Math.round(SIMPLER * looks);
  for (let wave = 0; wave < WAVES; wave += 1) {
    const room = Math.max(0, Math.ceil((bred - looked) / (WAVES - wave)));
    const breeder = new Breeder(starts, wave === 0 ? [] : parents(), new Stream(rootOf(programme.shuffleWord)).future(SEARCH, wave));
    const newcomers = Array.from({ length: room }, (_, n) => {
      for (const { start, taken } of breeder.proposals(n)) {
        const made = candidate(programme, starts, start, taken);
        if (fresh(made)) return made;
      }
      return [];
    }).flat();
    looked += newcomers.length;
    deep = [...deep, ...(await halved(newcomers, deep, runMore))];
    told();
  }
  const simpler = parents()
    .flatMap(({ start, taken }) => taken.flatMap((now, c) => (now === AS_IT_STANDS ? [] : { start, taken: taken.with(c, AS_IT_STANDS) })))
    .flatMap(({ start, taken }) => candidate(programme, starts, start, taken) ?? [])
    .filter(fresh)
    .slice(0, Math.max(0, looks - looked));
  looked += simpler.length;
  deep = [...deep, ...(await Promise.all(simpler.map(allSteps)))];
  told();
  return { looked, deep, futures: spent };
}

/** Runs a wave through the steps; after each but the last the worse half drops out. */
async function halved(wave: readonly Candidate[], before: readonly Look[], runMore: (look: Look, upTo: number) => Promise<Look>): Promise<readonly Look[]> {
  let left: readonly Look[] = wave.map(unseen);
  for (const [s, step] of STEPS.entries()) {
    left = (await Promise.all(left.map((look) => runMore(look, step)))).filter((look) => !surelyOver(look));
    if (s < STEPS.length - 1) left = bestOfWave(left, before, s, Math.max(GO_ON, Math.ceil(wave.length / 2 ** (s + 1))));
  }
  return left;
}

const SEARCH = textKey('purpose/better plans');

/** All of these by what was seen of them up to a step, the best first; those within the limits before the others. */
export function ranked(looks: readonly Look[], step: number): readonly Look[] {
  return [true, false].flatMap((within) => {
    const some = looks.filter((look) => allowed(look) === within && look.points.length > step);
    return ranking(some.flatMap((look) => look.points.slice(step, step + 1))).flatMap((i) => some.slice(i, i + 1));
  });
}

/** Newcomers are ranked in the company of those that came before, over the same futures. */
function bestOfWave(wave: readonly Look[], before: readonly Look[], step: number, howMany: number): readonly Look[] {
  const kept = new Set(
    ranked([...before, ...wave], step)
      .filter((look) => wave.includes(look))
      .slice(0, howMany),
  );
  return wave.filter((look) => kept.has(look));
}

/** Proposes candidates, known or not. */
class Breeder {
  constructor(
    private readonly starts: readonly Start[],
    private readonly parents: readonly Candidate[],
    private readonly stream: Stream,
  ) {}

  /** As many as are tried for the n-th of a wave. */
  *proposals(n: number): Generator<Pick<Candidate, 'start' | 'taken'>> {
    this.stream.key(n);
    for (let tries = 0; tries < TRIES; tries += 1) yield this.propose(n + tries);
  }

  private below(bound: number): number {
    return Math.floor(this.stream.uniform() * bound);
  }

  /** In the first wave each of the user's plans in turn with one change or two; later one of the best so far, changed or mixed. */
  private propose(turn: number): Pick<Candidate, 'start' | 'taken'> {
    const parent = this.parents[this.below(this.parents.length)];
    if (!parent || this.stream.uniform() < RESTARTS) {
      const start = turn % this.starts.length;
      const none = this.starts[start]?.choices.map(() => AS_IT_STANDS) ?? [];
      return { start, taken: this.changed(start, none, parent ? 2 + this.below(3) : 1 + this.below(2)) };
    }
    const { start } = parent;
    const mates = this.parents.filter((other) => other !== parent && other.start === start);
    const mate = mates[this.below(mates.length)];
    if (mate && this.stream.uniform() < MIXED) {
      const mixed = parent.taken.map((own, c) => (this.stream.uniform() < 0.5 ? own : (mate.taken[c] ?? own)));
      return { start, taken: mixed };
    }
    return { start, taken: this.changed(start, parent.taken, this.stream.uniform() < SINGLE ? 1 : 2) };
  }

  private changed(start: number, taken: readonly number[], times: number): readonly number[] {
    const choices = this.starts[start]?.choices ?? [];
    let now = taken;
    for (let i = 0; i < times && choices.length > 0; i += 1) {
      const c = this.below(choices.length);
      now = now.with(c, this.otherThan(now[c] ?? AS_IT_STANDS, choices[c]?.alternatives.length ?? 0));
    }
    return now;
  }

  /** Another alternative: half of the time the next smaller or greater, as numbers and ages stand in order; else any, as it stands among them. */
  private otherThan(now: number, of: number): number {
    const step = this.stream.uniform() < 0.5 ? -1 : 1;
    const next = now + step;
    if (now !== AS_IT_STANDS && this.stream.uniform() < 0.5 && next >= 0 && next < of) return next;
    const any = this.below(of) - 1;
    return any < now ? any : any + 1;
  }
}
