import type { GenerationOutlook, Outlook, OriginOutlook, PlanOutlook, Spread } from '../../results/outlook.ts';
import { common } from '../../text/charts.ts';
import { rowText, tableText, verdictText } from '../../text/charts-table.ts';
import type { Row } from './row.ts';
import { amountVerdict } from './verdicts.ts';

/** The last generation of a plan that kept a pick in some future, where origin is followed. */
interface Followed {
  readonly plan: PlanOutlook;
  readonly last: (GenerationOutlook & { readonly origin: OriginOutlook }) | null;
}

const hasOrigin = (one: GenerationOutlook): one is GenerationOutlook & { readonly origin: OriginOutlook } => one.origin !== undefined && one.picked > 0;

/** How much of each kind is left in a plan’s last picks, and the length that came with the gene; no rows where origin is not followed. */
export function originRows({ plans }: Outlook): Row[] {
  const followed = plans.map((plan): Followed => ({ plan, last: plan.generations.findLast(hasOrigin) ?? null }));
  const some = followed.flatMap(({ last }) => last?.origin ?? []);
  const [first] = some;
  if (!first) return [];
  const shareOf = (origin: OriginOutlook | undefined, kind: string) => origin?.kinds.find((one) => one.kind === kind)?.share;
  const average = (kind: string) => some.reduce((sum, origin) => sum + (shareOf(origin, kind)?.mean ?? 0), 0) / some.length;
  // What is left of the kind that most of the picks are is asked by nobody.
  const [, ...left] = [...first.kinds].sort((a, b) => average(b.kind) - average(a.kind));
  const rows = left
    .filter(({ kind }) => average(kind) > 0)
    .map(({ kind }) => row(followed, `origin-${kind}`, rowText.origin(kind), (origin) => shareOf(origin, kind), tableText.percent));
  const { around } = first;
  return around ? [...rows, row(followed, 'around', rowText.around(around.gene), (origin) => origin.around?.length, tableText.centimorgans)] : rows;
}

function row(followed: readonly Followed[], id: string, title: string, read: (origin: OriginOutlook) => Spread | undefined, print: (n: number) => string): Row {
  const spreads = followed.map(({ plan, last }) => ({ plan, last, amount: last ? read(last.origin) : undefined }));
  return {
    id,
    title,
    note: rowText.originNote,
    cells: spreads.map(({ plan, amount }) =>
      amount
        ? {
            plan: plan.id,
            main: print(amount.p50),
            small: print(amount.p10) === print(amount.p90) ? '' : tableText.between(print(amount.p10), print(amount.p90)),
          }
        : { plan: plan.id, main: common.noValue, small: '' },
    ),
    verdict: amountVerdict(
      spreads.flatMap(({ plan, last, amount }) =>
        amount && last ? [{ mark: plan.mark, amount, runs: Math.max(1, Math.round(last.picked * plan.runs)) }] : [],
      ),
      'least',
      verdictText.least,
    ),
  };
}
