import type { Programme } from '../model/programme.ts';
import type { LeftOut, PlacedBatch } from './batches.ts';
import { learnFirstFruit, statedFruit } from './first-fruit.ts';
import { fruitingFacts } from './fruiting-facts.ts';
import { groupBy, row, totals } from './learned-row.ts';
import type { CountsNote, Learned, LearnedRates } from './learned-types.ts';
import { shareDensity, statedOf, timeDensity } from './priors.ts';
import { learnLosses, WAVE_FROM } from './survival.ts';
import type { Stretch } from './stretch.ts';
import { learnTake, stockAt, type takeFacts } from './takes.ts';

/** Rows of the take of tender and of ripe wood on one stock. */
export function takeRows(programme: Programme, facts: ReturnType<typeof takeFacts>['facts'], note: CountsNote): Learned[] {
  const found = facts[0] && stockAt(programme, facts[0].stock);
  if (!found) return [];
  const { stock, at } = found;
  const { tender, ripe } = learnTake(stock, facts);
  const of = { section: 'stocks', id: stock.id, name: stock.name } as const;
  // Wood between tender and ripe speaks to both; each row counts the grafts that its number had most of the weight in.
  const nearTender = (month: number): boolean => month <= (1 + stock.ripeMonths) / 2;
  return (
    [
      ['takeTender', tender, true],
      ['takeRipe', ripe, false],
    ] as const
  ).flatMap(([what, belief, isTender]) => {
    const own = facts.filter(({ month }) => nearTender(month) === isTender);
    if (own.length === 0) return [];
    const counts = totals(own.map(({ took, grafted }) => ({ hits: took, of: grafted })));
    return [
      row(
        { what, path: ['stocks', at, what], of, scale: 'share', before: statedOf(stock[what]), prior: shareDensity(stock[what]), belief, counts, seen: own },
        note,
      ),
    ];
  });
}

/** Rows of winter losses, from batches without weak seedlings. */
export function lossRows(programme: Programme, placed: readonly PlacedBatch[], stretches: readonly Stretch[], note: CountsNote): LearnedRates {
  const leftOut: LeftOut[] = [];
  const sound = stretches.filter((stretch) => {
    const one = placed.find(({ batch }) => batch.id === stretch.batch);
    return one !== undefined && !one.entry.weakness && !one.batch.grafting;
  });
  for (const one of placed)
    if (!sound.some(({ batch }) => batch === one.batch.id) && stretches.some(({ batch }) => batch === one.batch.id))
      leftOut.push({ batch: one.batch.id, name: one.batch.name, why: one.batch.grafting ? 'graftedWeak' : 'weakCross', about: '' });
  const rates = programme.kinds.flatMap((kind, at) => {
    const seen = sound.filter((stretch) => stretch.kind === kind.id);
    const learned = learnLosses(seen, kind);
    if (!learned) return [];
    const of = { section: 'kinds', id: kind.id, name: kind.name } as const;
    return (
      [
        ['firstWinter', 'firstYearLoss', learned.first],
        ['laterWinters', 'yearlyLoss', learned.later],
      ] as const
    ).flatMap(([what, key, belief]): Learned[] => {
      const own = seen.filter(({ age, until }) => (what === 'firstWinter' ? age < 0.75 && until >= 0.75 : until >= 1.75));
      if (own.length === 0) return [];
      const counts = {
        hits: own.reduce((sum, { atRisk, alive }) => sum + atRisk - alive, 0),
        // A tree that is looked at winter after winter is one tree.
        of: groupBy(own, ({ batch }) => batch).reduce((sum, all) => sum + Math.max(...all.map(({ atRisk }) => atRisk)), 0),
        springs: own.length,
      };
      const made = row(
        { what, path: ['kinds', at, key], of, scale: 'share', before: statedOf(kind[key]), prior: shareDensity(kind[key]), belief, counts, seen: own },
        note,
      );
      return [what === 'laterWinters' && (learned.wave?.chance ?? 0) >= WAVE_FROM && learned.wave ? { ...made, wave: learned.wave } : made];
    });
  });
  return { rates, leftOut };
}

/** Rows of first fruit and of the trees that never bear. */
export function fruitRows(programme: Programme, placed: readonly PlacedBatch[], note: CountsNote): LearnedRates {
  const { facts, leftOut } = fruitingFacts(programme, placed);
  const rates = programme.kinds.flatMap((kind, at): Learned[] => {
    const seen = facts.filter((one) => one.kind === kind.id);
    const stated = statedFruit(programme, kind);
    const learned = stated && learnFirstFruit(kind, stated, seen);
    if (!learned) return [];
    const of = { section: 'kinds', id: kind.id, name: kind.name } as const;
    const fruited = seen.reduce((sum, one) => sum + one.fruited, 0);
    const counts = { hits: fruited, of: fruited + seen.reduce((sum, { waiting }) => sum + waiting, 0), springs: seen.length };
    const path = ['kinds', at, 'firstFruit'];
    const looks = seen.flatMap(({ batch, first, year }) => [
      { batch, year: first },
      { batch, year },
    ]);
    const years = (what: 'halfFruitBy' | 'ninetyFruitBy', key: 'half' | 'ninety') =>
      row(
        {
          what,
          path: [...path, key],
          of,
          scale: 'years',
          before: statedOf(stated[key]),
          prior: timeDensity(stated[key]),
          belief: learned[key],
          counts,
          seen: looks,
          bounds: { min: learned.earliest, max: 60 },
        },
        note,
      );
    const [half, ninety] = [years('halfFruitBy', 'half'), years('ninetyFruitBy', 'ninety')];
    // The three seasons belong together: one click puts them all, whatever form was there before.
    const earliest = 'earliest' in kind.firstFruit && stated.earliest === learned.earliest ? kind.firstFruit.earliest : learned.earliest;
    const puts = [{ path, value: { earliest, half: half.estimate, ninety: ninety.estimate } }];
    const never = row(
      {
        what: 'neverFruits',
        path: ['kinds', at, 'neverFruits'],
        of,
        scale: 'share',
        before: statedOf(kind.neverFruits),
        prior: shareDensity(kind.neverFruits),
        belief: learned.never,
        counts,
        seen: looks,
      },
      note,
    );
    return [{ ...half, puts }, { ...ninety, puts }, never];
  });
  return { rates, leftOut };
}
