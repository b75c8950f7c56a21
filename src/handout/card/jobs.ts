import type { Father, Generation, Programme } from '../../model/programme.ts';
import { JOB_KINDS, type Job, type JobKind } from '../../results/season.ts';
import type { Work } from './season.ts';

/** When things ripen and wake where the orchard stands. Months are 1–12. */
export interface Climate {
  /** Month in which bloom begins: 4 in much of the north, 10 in much of the south. */
  readonly bloomMonth: number;
  /** Months from bloom to ripe fruit. */
  readonly ripeAfter: number;
}

/** Work that comes up in fewer futures is not worth a line on a small page. */
const LEAST_SHARE = 0.05;

/**
 * Lists the jobs of one season of a plan, in the order of the year: from the winter before its bloom to the winter after.
 * Months follow from the month of bloom, so the same plan serves both hemispheres. Common practice, no source: scions are cut three months
 * before bloom and seed is sown one month before it; set is counted a month after; seed is laid down cold a month after it was gathered;
 * a rescue graft falls as many months after bloom as the seedlings are old.
 */
export function jobsOf(programme: Programme, work: readonly Work[], climate: Climate): readonly Job[] {
  const { bloomMonth, ripeAfter } = climate;
  const at = (monthsFromBloom: number): Pick<Job, 'month' | 'yearsOn'> => {
    const month = bloomMonth - 1 + monthsFromBloom;
    const years = Math.floor(month / 12);
    return { month: (((month % 12) + 12) % 12) + 1, yearsOn: years < 0 ? -1 : years > 0 ? 1 : 0 };
  };
  const jobs = work.flatMap(({ generation, round, ...share }): (Job & { readonly order: number })[] => {
    const name = generation.repeat > 1 ? `${generation.name} ${String(round)}` : generation.name;
    const crosses = crossesOf(programme, generation);
    const open = generation.pollen === 'open';
    const job = (kind: JobKind, months: number, of: number, amount: number | null = null, stock: string | null = null) => ({
      kind,
      ...at(months),
      generation: name,
      crosses,
      amount,
      stock,
      share: of,
      order: months,
    });
    const { rescue, backup } = generation;
    const each = Math.ceil(generation.flowers / Math.max(1, crosses.length));
    return [
      ...(backup ? [job('backup', -1, share.backup, backup.copies, stockName(programme, backup.stock)), job('cutScions', -3, share.backup)] : []),
      job('sow', -1, share.sow),
      ...(open ? [] : [job('bags', -1, share.pollinate), job('pollinate', 0, share.pollinate, each), job('countSet', 1, share.pollinate)]),
      ...(rescue && rescue.who !== 'none'
        ? [job('rescue', Math.max(1, Math.round(rescue.month) % 12), share.graft, rescue.scions, stockName(programme, rescue.stock))]
        : []),
      job('judge', ripeAfter, share.judge, fruitsCut(programme)),
      job(open ? 'gatherOpen' : 'gather', ripeAfter, share.pollinate),
      job('layDown', ripeAfter + 1, share.pollinate),
    ];
  });
  return jobs
    .filter(({ share }) => share >= LEAST_SHARE)
    .sort((a, b) => a.order - b.order || JOB_KINDS.indexOf(a.kind) - JOB_KINDS.indexOf(b.kind))
    .map(({ order: _order, ...job }) => job);
}

/** Most fruits that any grade of the programme wants cut per tree and season; null where none is graded. */
function fruitsCut({ traits }: Programme): number | null {
  const cut = traits.flatMap((trait) => (trait.type === 'shown' && trait.grade ? [trait.grade.fruitsCut] : []));
  return cut.length === 0 ? null : Math.max(...cut);
}

const stockName = ({ stocks }: Programme, id: string): string | null => stocks.find((stock) => stock.id === id)?.name ?? null;

/** Every seed parent × pollen parent of a generation, by name. */
export function crossesOf(programme: Programme, generation: Generation): readonly string[] {
  const nameOf = (parent: Father): string => {
    if ('tree' in parent) return programme.trees.find(({ id }) => id === parent.tree)?.name ?? parent.tree;
    const of = 'sires' in parent ? parent.sires : parent.picksOf;
    const name = programme.plans.flatMap(({ generations }) => generations).find(({ id }) => id === of)?.name ?? of;
    return 'sires' in parent ? `best fathers of ${name}` : name;
  };
  const { pollen } = generation;
  const mothers = generation.seedParents.map(nameOf);
  if (pollen === 'open') return mothers.map((mother) => `${mother} × open`);
  if (pollen === 'self') return mothers.map((mother) => `${mother} × itself`);
  return mothers.flatMap((mother) =>
    pollen.map(nameOf).flatMap((father) => [`${mother} × ${father}`, ...(generation.reciprocal ? [`${father} × ${mother}`] : [])]),
  );
}
