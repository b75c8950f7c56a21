import type { Interval, Outlook, PlanOutlook, Spread } from '../../results/outlook.ts';
import { common, yearRange } from '../../text/charts.ts';
import { rowText, tableText, verdictText } from '../../text/charts-table.ts';
import { leadChange } from '../../statistics/lead.ts';
import { tellingYear } from '../chance-by-year/crossing.ts';
import { halfOfAll, halfOfSuccesses, type MedianYear } from './median-year.ts';
import { originRows } from './origin-rows.ts';
import type { Cell, Row } from './row.ts';
import { amountVerdict, chanceVerdict, overVerdict, placesVerdict, shareVerdict, yearVerdict, type Verdict } from './verdicts.ts';

/** Limits the breeder has stated; null where none. */
export interface Limits {
  readonly hours: number | null;
  readonly places: number | null;
}

const shareCell = (plan: string, share: Interval | null | undefined): Cell =>
  share ? { plan, main: tableText.percent(share.value), small: tableText.percentRange(share.low, share.high) } : { plan, main: common.noValue, small: '' };

/** All rows of the table, in the order in which a breeder asks. */
export function tableRows(outlook: Outlook, limits: Limits): Row[] {
  return [
    chanceRow(outlook),
    ...chanceByRow(outlook),
    halfRow(outlook),
    worksRow(outlook),
    ...amountRows(outlook, limits),
    ...trulyGoodRow(outlook),
    ...originRows(outlook),
    ...ruleRows(outlook),
  ];
}

function chanceRow({ plans, comparisons, lastYear }: Outlook): Row {
  return {
    id: 'chance',
    title: rowText.chance(lastYear),
    note: rowText.chanceNote,
    cells: plans.map(({ id, chance }) => shareCell(id, chance)),
    verdict: chanceVerdict(plans, comparisons),
  };
}

/** The chance where the lead changes, or, where it never does, when the best is half way. */
function chanceByRow({ plans }: Outlook): Row[] {
  const crossing = leadChange(plans);
  const year = crossing ? crossing.year : tellingYear(plans);
  if (year === null) return [];
  const at = (plan: PlanOutlook) => plan.chanceByYear.find((point) => point.year === year);
  return [
    {
      id: 'chance-by',
      title: rowText.chanceBy(year),
      note: crossing ? rowText.meeting(plans.find(({ id }) => id === crossing.late)?.mark ?? '') : rowText.halfWay,
      cells: plans.map((plan) => shareCell(plan.id, at(plan))),
      verdict: shareVerdict(plans.map((plan) => ({ mark: plan.mark, share: at(plan) ?? null }))),
    },
  ];
}

function halfRow({ plans, lastYear }: Outlook): Row {
  const medians = plans.map((plan) => ({ plan, mark: plan.mark, median: halfOfAll(plan) }));
  return {
    id: 'half',
    title: rowText.half,
    note: '',
    cells: medians.map(({ plan, median }) => ({
      plan: plan.id,
      main: median.year === null ? tableText.notReached(lastYear) : String(median.year),
      small: medianWords(median, lastYear),
    })),
    verdict: yearVerdict(medians, true),
  };
}

function medianWords({ year, from, to }: MedianYear, lastYear: number): string {
  if (year === null || from === null) return '';
  if (from === to) return tableText.toTheYear;
  return to !== null && year - from === to - year ? tableText.plusYears(to - year) : yearRange(from, to, lastYear);
}

function worksRow({ plans, lastYear }: Outlook): Row {
  const medians = plans.map((plan) => ({ mark: plan.mark, median: halfOfSuccesses(plan) }));
  return {
    id: 'works',
    title: rowText.works,
    note: rowText.worksNote,
    cells: plans.map(({ id, whenItWorks: { p10, p50, p90 } }) =>
      p50 === null ? { plan: id, main: common.noValue, small: '' } : { plan: id, main: String(p50), small: yearRange(p10, p90, lastYear) },
    ),
    verdict: yearVerdict(medians, false),
  };
}

function amountRows({ plans }: Outlook, limits: Limits): Row[] {
  const of = (read: (plan: PlanOutlook) => Spread) => plans.map((plan) => ({ mark: plan.mark, amount: read(plan), runs: plan.runs }));
  const row = (
    id: string,
    title: string,
    note: string,
    read: (plan: PlanOutlook) => Spread,
    verdict: Verdict,
    unit: (n: number) => string = (n) => tableText.whole(n),
  ): Row => ({
    id,
    title,
    note,
    cells: plans.map((plan) => amountCell(plan.id, read(plan), unit)),
    verdict,
  });
  const over = plans.some(({ overHours }) => overHours !== null);
  return [
    row('seedlings', rowText.seedlings, rowText.middleNote, ({ seedlings }) => seedlings, seedlingVerdict(plans)),
    row(
      'fruiting',
      rowText.fruiting,
      '',
      ({ fruiting }) => fruiting,
      amountVerdict(
        of(({ fruiting }) => fruiting),
        'most',
        verdictText.most,
      ),
    ),
    row(
      'tree-years',
      rowText.treeYears,
      rowText.treeYearsNote,
      ({ treeYears }) => treeYears,
      amountVerdict(
        of(({ treeYears }) => treeYears),
        'least',
        verdictText.least,
      ),
    ),
    row('grafts', rowText.grafts, '', ({ grafts }) => grafts, graftVerdict(plans)),
    row(
      'hours',
      rowText.hours,
      limits.hours === null ? '' : rowText.limit(limits.hours),
      ({ busiestHours }) => busiestHours,
      amountVerdict(
        of(({ busiestHours }) => busiestHours),
        'least',
        verdictText.least,
      ),
      tableText.hours,
    ),
    ...(over
      ? [
          {
            id: 'over',
            title: rowText.over(limits.hours),
            note: rowText.overNote,
            cells: plans.map(({ id, overHours }) => shareCell(id, overHours)),
            verdict: overVerdict(plans),
          },
        ]
      : []),
    row(
      'places',
      rowText.places,
      limits.places === null ? '' : rowText.have(limits.places),
      ({ mostPlaces }) => mostPlaces,
      limits.places === null
        ? amountVerdict(
            of(({ mostPlaces }) => mostPlaces),
            'least',
            verdictText.fewest,
          )
        : placesVerdict(plans, limits.places),
    ),
  ];
}

const amountCell = (plan: string, { p10, p50, p90 }: Spread, unit: (n: number) => string): Cell => ({
  plan,
  main: unit(Math.round(p50)),
  small: Math.round(p10) === Math.round(p90) ? '' : tableText.range(Math.round(p10), Math.round(p90)),
});

/** Share of futures lost to dead seedlings from which few seedlings are a bad sign. */
const MANY_DIE = 0.25;

function seedlingVerdict(plans: readonly PlanOutlook[]): Verdict {
  const amounts = plans.map(({ mark, seedlings, runs }) => ({ mark, amount: seedlings, runs }));
  const verdict = amountVerdict(amounts, 'least', verdictText.fewest);
  const fewest = [...plans].sort((a, b) => a.seedlings.p50 - b.seedlings.p50)[0];
  return verdict.kind === 'clear' && fewest && fewest.failures.seedlingsDied >= MANY_DIE ? { ...verdict, text: verdictText.because(verdict.text) } : verdict;
}

function graftVerdict(plans: readonly PlanOutlook[]): Verdict {
  const without = plans.filter(({ grafts }) => grafts.p90 === 0).map(({ mark }) => mark);
  if (without.length > 0 && without.length < plans.length) return { kind: 'plain', text: verdictText.noGrafts(without) };
  return amountVerdict(
    plans.map(({ mark, grafts, runs }) => ({ mark, amount: grafts, runs })),
    'most',
    verdictText.most,
  );
}

function trulyGoodRow({ plans }: Outlook): Row[] {
  if (plans.every(({ trulyGood }) => trulyGood === null)) return [];
  return [
    {
      id: 'truly-good',
      title: rowText.trulyGood,
      note: rowText.trulyGoodNote,
      cells: plans.map(({ id, trulyGood }) =>
        trulyGood
          ? { plan: id, main: tableText.of(trulyGood.value), small: tableText.percentRangeSign(trulyGood.low, trulyGood.high) }
          : { plan: id, main: common.noValue, small: '' },
      ),
      verdict: shareVerdict(plans.map(({ mark, trulyGood }) => ({ mark, share: trulyGood }))),
    },
  ];
}

/** One row per rule of inheritance that any plan leans on. */
function ruleRows({ plans }: Outlook): Row[] {
  const rules = new Map(plans.flatMap(({ byRule }) => byRule.map(({ trait, rule }) => [`${trait}\n${rule}`, { trait, rule }])));
  return [...rules.entries()].map(([key, { trait, rule }]) => {
    const shares = plans.map(({ id, mark, byRule }) => ({
      id,
      mark,
      share: byRule.find((part) => part.trait === trait && part.rule === rule)?.chance ?? null,
    }));
    return {
      id: `rule-${key}`,
      title: rowText.rule(rule),
      note: rowText.ruleNote(trait),
      cells: shares.map(({ id, share }) => shareCell(id, share)),
      verdict: shareVerdict(shares),
    };
  });
}
