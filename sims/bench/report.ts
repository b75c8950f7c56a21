import { alignedTable } from '../../src/results/writers/table.ts';
import { whole } from '../../src/text/charts.ts';
import type { Against } from './against.ts';
import type { PageSpeed } from './page-speed.ts';
import type { QuestionSpeed } from './questions.ts';
import type { Ratio } from './ratio.ts';
import type { Range, Speed } from './speed.ts';

export interface Benchmark {
  readonly format: 'orchard-odds benchmark';
  readonly version: 1;
  readonly engine: string;
  readonly node: string;
  readonly processor: string;
  readonly cores: number;
  readonly title: string;
  /** SHA-256 of the programme. */
  readonly programme: string;
  readonly futures: number;
  readonly plans: number;
  readonly speeds: readonly Speed[];
  readonly against: Against | null;
  readonly questions: readonly QuestionSpeed[] | null;
  readonly page: PageSpeed | null;
}

/** The benchmark as a person reads it. */
export function benchReport(bench: Benchmark): string {
  const { title, futures, plans, node, processor, cores, engine } = bench;
  const head = `${title}: ${whole(futures)} futures × ${String(plans)} plans. Engine ${engine}, Node ${node}, ${processor}, ${String(cores)} ${cores === 1 ? 'core' : 'cores'}.`;
  return `${[head, speeds(bench.speeds), bench.against === null ? '' : against(bench.against), bench.questions === null ? '' : questions(bench.questions), bench.page === null ? '' : page(bench.page)].filter((part) => part !== '').join('\n\n')}\n`;
}

const span = ({ low, middle, high }: Range) => `${whole(middle)} (${whole(low)}–${whole(high)})`;

function speeds(list: readonly Speed[]): string {
  const rows = list.map((speed) => [
    speed.threads === 1 ? 'one thread' : `all ${String(speed.threads)} cores`,
    span(speed.runsPerSecond),
    span(speed.seedlingsPerSecond),
    span(speed.nanosecondsPerSeedling),
  ]);
  return `${alignedTable([['', 'runs a second', 'seedlings a second', 'ns a seedling'], ...rows])}\nMiddle and range of ${list.map(({ stretches, threads }) => `${String(stretches)} stretches on ${String(threads)}`).join(', ')}. A run is one future of one plan.`;
}

const digits = (value: number) => value.toFixed(3);
const times = ({ value, low, high }: Ratio) => `${digits(value)} (${digits(low)}–${digits(high)})`;

function against({ ref, commit, pairs, runsPerSecond, seedlingsPerSecond }: Against): string {
  const verdict = runsPerSecond.low > 1 ? 'faster now' : runsPerSecond.high < 1 ? 'slower now' : 'no clear difference';
  return [
    `Against ${ref} (${commit.slice(0, 10)}), one thread, ${String(pairs)} pairs in turn, times as fast now (95 %): ${verdict}`,
    alignedTable([
      ['runs a second', times(runsPerSecond)],
      ['seedlings a second', times(seedlingsPerSecond)],
    ]),
  ].join('\n');
}

const ms = (value: number) => `${whole(value)} ms`;
const task = (value: number) => (value === 0 ? 'under 50 ms' : ms(value));

function questions(list: readonly QuestionSpeed[]): string {
  const rows = list.map(({ question, first, coarseMap, whole: all, futures }) => [
    question,
    ms(first),
    coarseMap === null ? '' : ms(coarseMap),
    ms(all),
    whole(futures),
  ]);
  return ['Questions about one plan, each alone, on all cores', alignedTable([['', 'first answer', 'first map', 'whole', 'futures a figure'], ...rows])].join(
    '\n',
  );
}

function page({ browser, series }: PageSpeed): string {
  const rows = series.map(({ what, edits, editToPaint, longestTask }) => [
    what,
    String(edits),
    ms(editToPaint.median),
    ms(editToPaint.worst),
    task(longestTask.median),
    task(longestTask.worst),
  ]);
  return [`The page in Chromium ${browser}, workers running`, alignedTable([['', 'edits', 'edit to picture', 'worst', 'longest task', 'worst'], ...rows])].join(
    '\n',
  );
}
