import { FactReader } from '../engine/fact-reader.ts';
import type { Plan, Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import type { Interval } from '../results/outlook.ts';
import { clearlyDifferent } from '../statistics/compare.ts';
import type { Futures } from './futures.ts';
import { outcomeOf } from './outcome.ts';
import { noAnswer, type Answer, type Question } from './question.ts';
import { extended } from './steps.ts';
import { unknownFacts, type UnknownFact } from './unknown-facts.ts';
import { figuresOf, scoresOf, type FactFigures, type Figures } from './unknown-figures.ts';
import { alternativesOf, chancesIf, flipsOf, type Alternative, type ChanceIf, type Flip } from './unknown-flips.ts';
import { LUCKS, UnknownRuns } from './unknown-runs.ts';
import { wayToLearn, type WayToLearn } from './unknown-ways.ts';
import { onlyPlan } from './variants.ts';

/** Levels that every fact is held at, at most; each of them in REPLICATES futures in the end. */
const MOST_LEVELS = 1000;
const FEWEST_LEVELS = 40;
/** Steps of the answer: times through all levels, and shares of the sets and of the rows with one fact drawn anew. */
const STEPS = [
  { replicates: 4, sets: 0.1, rows: 0.04 },
  { replicates: 14, sets: 0.4, rows: 0.12 },
  { replicates: 40, sets: 1, rows: 0.36 },
] as const;
/** Futures of every plan under every alternative: fewer where there are many of both. */
const SETTLED = { steps: [0.2, 0.5, 1], most: 1000, fewest: 200, inAll: 40_000 } as const;

/** A fact, how much it matters and how to learn it. Shares are of what all facts explain together. */
export interface RankedFact extends UnknownFact, FactFigures {
  /** Its interval leaves out 0, on its own or together with others, and it has changed a future; false: too small to tell from the luck of the futures made. */
  readonly clear: boolean;
  /** What the chance would be under each rule, or with a yes and with a no; empty for other facts. */
  readonly alternatives: readonly ChanceIf[];
  readonly learn: WayToLearn;
}

export interface UnknownsAnswer extends Answer {
  readonly question: 'unknowns';
  /** Chance of a proven tree by the last year, and of the proven trees the share that truly are good. */
  readonly chance: Interval;
  readonly trulyGood: Interval | null;
  /** Share of the spread of outcomes that is luck, 0–1; the rest is what the facts explain. */
  readonly luck: Interval;
  /** False when the facts together explain less than can be measured with so many futures. */
  readonly measurable: boolean;
  /** What matters most on its own stands first. */
  readonly facts: readonly RankedFact[];
  /** Id of the fact worth finding out: the one that matters most, clearly, and that can be learned; null when there is none. */
  readonly worth: string | null;
  /** Pairs of plans that change places with what a fact turns out to be. */
  readonly flips: readonly Flip[];
}

/** Which unknown matters most to the chance of a plan? `clear` says whether the first clearly matters more than the second. */
export const unknowns: Question<UnknownsAnswer> = {
  id: 'unknowns',
  async ask(programme, { plan: id, runs = programme.runs }, futures, report) {
    const plan = programme.plans.find((entry) => entry.id === id);
    if (!plan) return noAnswer('unknowns', id, 'noPlan');
    const facts = unknownFacts(programme, new FactReader(programme).drawn());
    return asked(programme, plan, facts, runs, futures, report);
  },
};

async function asked(
  programme: Programme,
  plan: Plan,
  facts: readonly UnknownFact[],
  runs: number,
  futures: Futures,
  report: (partial: UnknownsAnswer) => void,
): Promise<UnknownsAnswer> {
  const alone = onlyPlan(programme, plan.id);
  const levels = Math.min(MOST_LEVELS, Math.max(FEWEST_LEVELS, Math.ceil(runs / 4)));
  const scores = scoresOf(alone, facts, levels);
  const mixed = new UnknownRuns(futures, alone, facts, levels);
  const settled = new Settled(programme, facts, futures);
  let answer: UnknownsAnswer | null = null;
  const tell = (done: boolean): UnknownsAnswer => {
    answer = answerOf(programme, plan, facts, { figures: figuresOf(alone, mixed, scores), mixed, settled }, done);
    report(answer);
    return answer;
  };
  let rows = 0;
  for (const [s, step] of STEPS.entries()) {
    await Promise.all([mixed.replicate(step.replicates), mixed.holdAll(Math.ceil(step.sets * levels))]);
    await settled.run(Math.ceil((SETTLED.steps[s] ?? 1) * settled.most(runs)));
    tell(false);
    const upTo = Math.ceil(step.rows * levels);
    // What has changed no future in two looks is not looked at again.
    await mixed.drawAnew(rows, upTo, (f) => s < 2 || (mixed.changed[f]?.changed ?? 0) > 0);
    rows = upTo;
    if (s < STEPS.length - 1) tell(false);
  }
  return tell(true);
}

/** All plans under every alternative of the rules and yes/no facts, on the programme’s own futures; and the programme as it stands. */
class Settled {
  readonly of: ReadonlyMap<string, readonly Alternative[]>;
  /** By fact and alternative: columns of every plan. */
  private readonly columns = new Map<Alternative, readonly Columns[]>();
  asItStands: readonly Columns[] = [];
  futuresRun = 0;

  constructor(
    private readonly programme: Programme,
    facts: readonly UnknownFact[],
    private readonly futures: Futures,
  ) {
    this.of = new Map(facts.map((fact) => [fact.id, alternativesOf(programme, fact)]));
  }

  /** Futures that every plan is run for under every alternative in the end. */
  most(runs: number): number {
    const ways = this.programme.plans.length * (1 + [...this.of.values()].flat().length);
    return Math.min(runs, SETTLED.most, Math.max(SETTLED.fewest, Math.floor(SETTLED.inAll / ways)));
  }

  async run(upTo: number): Promise<void> {
    const from = this.futuresRun;
    if (upTo <= from) return;
    const plans = this.programme.plans.map((_, p) => p);
    const further = async (programme: Programme, before: readonly Columns[]) => {
      const next = await this.futures.run(programme, plans, from, upTo - from);
      return next.map((columns, p) => extended(before[p], columns));
    };
    const all = [...this.of.values()].flat();
    const [asItStands, ...rest] = await Promise.all([
      further(this.programme, this.asItStands),
      ...all.map((alternative) => further(alternative.programme, this.columnsOf(alternative))),
    ]);
    this.asItStands = asItStands;
    all.forEach((alternative, a) => this.columns.set(alternative, rest[a] ?? []));
    this.futuresRun = upTo;
  }

  columnsOf(alternative: Alternative): readonly Columns[] {
    return this.columns.get(alternative) ?? [];
  }
}

interface Found {
  readonly figures: Figures;
  readonly mixed: UnknownRuns;
  readonly settled: Settled;
}

function answerOf(programme: Programme, plan: Plan, facts: readonly UnknownFact[], { figures, mixed, settled }: Found, done: boolean): UnknownsAnswer {
  const at = programme.plans.indexOf(plan);
  const mine = settled.asItStands[at];
  const ids = programme.plans.map(({ id }) => id);
  const ranked = facts
    .flatMap((fact, f): RankedFact[] => {
      const found = figures.facts[f];
      if (!found) return [];
      const alternatives = settled.of.get(fact.id) ?? [];
      return [
        {
          ...fact,
          ...found,
          clear: figures.measurable && touched(found) && (found.first.low > 0 || (found.total?.low ?? 0) > 0),
          alternatives: chancesIf(
            alternatives,
            alternatives.map((alternative) => settled.columnsOf(alternative)),
            at,
          ),
          learn: wayToLearn(programme, plan, fact),
        },
      ];
    })
    .sort((a, b) => Number(b.clear) - Number(a.clear) || b.first.value - a.first.value);
  const worth = ranked.find(({ first, clear, learn }) => clear && first.low > 0 && learn.hours !== null);
  const drawnAnew = Math.max(0, ...mixed.changed.map(({ of }) => of));
  return {
    question: 'unknowns',
    plan: plan.id,
    done,
    futures: Math.min(settled.futuresRun, mixed.replicates * mixed.levels, mixed.setLevels().sums.length * LUCKS, ...(drawnAnew > 0 ? [drawnAnew] : [])),
    clear: leads(ranked),
    cannotSay: null,
    chance: figures.chance,
    trulyGood: mine ? outcomeOf(mine, programme.startYear).trulyGood : null,
    luck: figures.luck,
    measurable: figures.measurable,
    facts: ranked,
    worth: worth?.id ?? null,
    flips: facts.flatMap(({ id }) => {
      const alternatives = settled.of.get(id) ?? [];
      return flipsOf(
        id,
        ids,
        alternatives,
        alternatives.map((alternative) => settled.columnsOf(alternative)),
      );
    }),
  };
}

/** Not when it has been drawn anew alone and no future came out another way: what its levels then seem to explain is luck. */
const touched = ({ changed: { changed, of } }: FactFigures): boolean => of === 0 || changed > 0;

/** Whether the first of the ranked facts is clearly ahead of the second: their intervals stand apart, as those of a difference would. */
function leads([first, second]: readonly RankedFact[]): boolean {
  if (!first || !first.clear || first.first.low <= 0) return false;
  if (!second) return true;
  const half = Math.hypot(first.first.value - first.first.low, second.first.high - second.first.value);
  const value = first.first.value - second.first.value;
  return clearlyDifferent({ value, low: value - half, high: value + half });
}
