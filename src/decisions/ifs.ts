import type { Plan, Programme } from '../model/programme.ts';
import type { Futures } from './futures.ts';
import { Growing } from './ifs/growing.ts';
import { jobsOf } from './ifs/jobs.ts';
import { LineRun, type IfLine } from './ifs/line.ts';
import { IFS, type Asked } from './ifs/registry.ts';
import type { IfId, WhyNot } from './ifs/way.ts';
import { worthOf, type Job } from './ifs/worth.ts';
import { outcomeOf, type Outcome } from './outcome.ts';
import { noAnswer, type Answer, type AskOptions, type NoAnswer, type Question } from './question.ts';
import { stepsTo, type Variant } from './steps.ts';
import { onlyPlan } from './variants.ts';

/** Curves are small and smooth: so many futures a point. */
const CURVE_RUNS = 600;

export interface IfsOptions extends AskOptions {
  /** Only this one, or only the jobs. */
  readonly if?: Asked;
  /** Calendar year in which it happens, instead of each one's own. One that an if cannot have is ignored. */
  readonly year?: number;
}

export interface IfsAnswer extends Answer {
  readonly question: 'ifs';
  readonly startYear: number;
  readonly lastYear: number;
  /** The plan as it stands. */
  readonly stands: Outcome;
  readonly lines: readonly IfLine[];
  /** What cannot happen to this plan, and why. */
  readonly cannot: readonly { readonly if: IfId; readonly why: WhyNot }[];
  /** This spring's jobs, those most worth an hour first; null when they were not asked for. */
  readonly jobs: readonly Job[] | null;
}

/**
 * What if something happens? Each if is run on the plan's own futures. `clear` says whether any of them makes a clear difference.
 */
export const ifs: Question<IfsAnswer, IfsOptions> = {
  id: 'ifs',
  async ask(programme, options, futures, report) {
    const plan = programme.plans.find(({ id }) => id === options.plan);
    if (!plan) return noAnswer('ifs', options.plan, 'noPlan');
    return asked(programme, plan, options, futures, report);
  },
};

async function asked(
  whole: Programme,
  plan: Plan,
  { if: only, year, runs = whole.runs }: IfsOptions,
  futures: Futures,
  report: (partial: IfsAnswer) => void,
): Promise<IfsAnswer | NoAnswer> {
  const programme = onlyPlan(whole, plan.id);
  const { startYear, lastYear } = programme;
  const stands: Variant = { programme, plan: 0 };
  const { lines, cannot } = linesOf(programme, plan, whole.plans, stands, only, year);
  const jobs = only === undefined || only === 'jobs' ? jobsOf(programme, plan) : null;
  const growing = new Growing(futures);
  const curveVariants = [stands, ...lines.flatMap((line) => line.curveVariants)];
  const mainVariants = [stands, ...lines.map(({ main }) => main), ...(jobs ?? []).map(({ changed }) => changed)];
  const tell = (done: boolean): IfsAnswer => {
    const columns = growing.of(stands);
    if (!columns) throw new RangeError('The plan as it stands was not run.');
    const found = lines.flatMap((line) => line.line(growing) ?? []);
    const weighed = jobs
      ? worthOf(
          jobs,
          columns,
          jobs.flatMap(({ changed }) => growing.of(changed) ?? []),
          startYear,
        )
      : null;
    const answer: IfsAnswer = {
      question: 'ifs',
      plan: plan.id,
      done,
      futures: columns.runs,
      clear: found.some(({ minusAsItStands }) => minusAsItStands.clear) || (weighed ?? []).some(({ clear }) => clear),
      cannotSay: null,
      startYear,
      lastYear,
      stands: outcomeOf(columns, startYear),
      lines: found,
      cannot,
      jobs: weighed,
    };
    report(answer);
    return answer;
  };
  for (const upTo of stepsTo(runs)) {
    await growing.to(mainVariants, upTo);
    tell(false);
    await growing.to(curveVariants, Math.min(upTo, CURVE_RUNS));
    if (upTo < runs) tell(false);
  }
  return tell(true);
}

function linesOf(
  programme: Programme,
  plan: Plan,
  all: readonly Plan[],
  stands: Variant,
  only: Asked | undefined,
  year: number | undefined,
): { readonly lines: readonly LineRun[]; readonly cannot: IfsAnswer['cannot'] } {
  const lines: LineRun[] = [];
  const cannot: { if: IfId; why: WhyNot }[] = [];
  for (const one of IFS.filter(({ id }) => only === undefined || id === only)) {
    const ways = one.ways(programme, plan, all);
    if (typeof ways === 'string') cannot.push({ if: one.id, why: ways });
    else lines.push(...ways.map((way) => new LineRun(way, stands, programme.startYear, year !== undefined && way.years.includes(year) ? year : undefined)));
  }
  return { lines, cannot };
}
