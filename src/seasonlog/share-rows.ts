import type { Programme } from '../model/programme.ts';
import { betaPdf } from '../statistics/beta.ts';
import { learnShare, pooledLuck, type LearnedShare } from '../statistics/between-springs.ts';
import { isCountsNote } from './own-counts.ts';
import type { PlacedBatch } from './batches.ts';
import { groupBy, row, totals } from './learned-row.ts';
import type { CountsNote, Learned } from './learned-types.ts';
import { shareDensity, statedOf, timeDensity } from './priors.ts';
import { lotsOf, type ShareFact } from './shares.ts';
import type { Stretch } from './stretch.ts';
import { coursePath, learnWeakness } from './weakness.ts';

/** Total weight of the beta prior of ρ: as if ten springs had been seen. Own choice. */
const LUCK_WEIGHT = 10;

/** Rows of fruit set, germination and the share of weak seedlings, and of the luck of the spring that those of all pairs show. */
export function shareRows(programme: Programme, facts: readonly ShareFact[], note: CountsNote): Learned[] {
  const learned = groupBy(facts, ({ path }) => path.join('/')).flatMap((own) => learnedShare(programme, own, note) ?? []);
  return [...learned.map(({ made }) => made), ...(['set', 'germination'] as const).flatMap((what) => luckRow(programme, what, learned, note))];
}

const LUCK_OF = { set: 'springLuckSet', germination: 'springLuckGermination' } as const;

const asNumber = (luck: number): number => Math.min(0.9, Number(luck.toPrecision(2)));

interface LearnedShareRow {
  readonly made: Learned;
  readonly facts: readonly ShareFact[];
  readonly learned: LearnedShare;
}

function learnedShare(programme: Programme, facts: readonly ShareFact[], note: CountsNote): LearnedShareRow | undefined {
  const [first] = facts;
  const cross = first && programme.crosses[first.cross];
  if (!cross) return undefined;
  const lots = lotsOf(facts);
  const luck = first.what === 'weakShare' ? 0 : programme.weather[LUCK_OF[first.what]];
  const prior = shareDensity(first.estimate, luck);
  const learned = learnShare(lots, prior, luck > 0 ? { mean: luck, weight: LUCK_WEIGHT } : null);
  const of = { section: 'crosses', id: cross.id, name: cross.name, ...(first.route === undefined ? {} : { route: first.route }) } as const;
  const before = statedOf(first.estimate, luck);
  const made = row({ what: first.what, path: first.path, of, scale: 'share', before, prior, belief: learned, counts: totals(lots), seen: facts }, note);
  if (!learned.luck) return { made, facts, learned };
  const { mean, low, high } = learned.luck;
  return { made: { ...made, nextSpring: learned.nextSpring(), luck: { mean, low, high } }, facts, learned };
}

/** A bad year among good ones widens what is forecast for every spring: the luck of the spring is one number of the whole orchard. */
function luckRow(programme: Programme, what: 'set' | 'germination', rows: readonly LearnedShareRow[], note: CountsNote): Learned[] {
  const own = rows.filter(({ made }) => made.what === what);
  const key = LUCK_OF[what];
  const stated = programme.weather[key];
  // One spring of each pair alone cannot tell a bad spring from a bad pair.
  if (stated <= 0 || !own.some(({ made }) => made.counts.springs > 1)) return [];
  const belief = pooledLuck(
    own.map(({ learned }) => learned),
    { mean: stated, weight: LUCK_WEIGHT },
  );
  const sourceKey = `${key}Source` as const;
  const used = isCountsNote(programme, note)(programme.weather[sourceKey]);
  const of = { section: 'weather', id: key, name: '' } as const;
  const counts = { hits: 0, of: 0, springs: own.reduce((sum, { made }) => sum + made.counts.springs, 0) };
  const path = ['weather', key];
  const made = row(
    {
      what: what === 'set' ? 'luckOfSet' : 'luckOfGermination',
      path,
      of,
      scale: 'share',
      before: { mean: stated },
      prior: (luck) => betaPdf(luck, stated * LUCK_WEIGHT, (1 - stated) * LUCK_WEIGHT),
      belief,
      counts,
      seen: own.flatMap(({ facts }) => facts),
    },
    note,
  );
  const value = asNumber(belief.mean);
  const source = { path: ['weather', sourceKey], value: note(made.counts.from, made.counts.to) };
  return [{ ...made, used, estimate: value, puts: [{ path, value }, source] }];
}

/**
 * Months by which half of the weak are dead, and their share where nobody counted weak ones: those that died tell of both. Batches whose
 * weak ones were grafted, and those on which nobody counted, say nothing.
 */
export function weakRows(
  programme: Programme,
  placed: readonly PlacedBatch[],
  stretches: readonly Stretch[],
  shares: readonly ShareFact[],
  note: CountsNote,
): Learned[] {
  return programme.crosses.flatMap((cross) => {
    const own = placed.filter(({ entry, batch }) => entry.id === cross.id && !batch.grafting);
    const [kind] = own.map((one) => one.kind);
    const seen = stretches.filter(({ batch }) => own.some((one) => one.batch.id === batch));
    const weak = shares
      .filter(({ what, batch }) => what === 'weakShare' && own.some((one) => one.batch.id === batch))
      .map(({ lot }) => ({ weak: lot.hits, of: lot.of }));
    const learned = kind && learnWeakness(cross, kind, seen, weak);
    if (!learned || !cross.weakness) return [];
    const { course } = cross.weakness;
    const path = coursePath(programme, cross);
    const of = { section: 'crosses', id: cross.id, name: cross.name } as const;
    const counts = {
      hits: seen.reduce((sum, { atRisk, alive }) => sum + atRisk - alive, 0),
      of: seen.reduce((sum, { atRisk }) => Math.max(sum, atRisk), 0),
      springs: new Set(seen.map(({ batch }) => batch)).size,
    };
    const before = 'halfLife' in course ? statedOf(course.halfLife) : null;
    const prior = 'halfLife' in course ? timeDensity(course.halfLife) : null;
    const share = row(
      {
        what: 'weakShare',
        path: ['crosses', programme.crosses.indexOf(cross), 'weakness', 'share'],
        of,
        scale: 'share',
        before: statedOf(cross.weakness.share),
        prior: shareDensity(cross.weakness.share),
        belief: learned.share,
        counts,
        seen,
      },
      note,
    );
    const made = row(
      {
        what: 'halfDeadBy',
        path: [...path, 'halfLife'],
        of,
        scale: 'months',
        before,
        prior,
        belief: learned.half,
        counts,
        seen,
        bounds: { min: 0.05, max: 1200 },
      },
      note,
    );
    return [...(weak.length === 0 ? [share] : []), { ...made, puts: [{ path, value: { halfLife: made.estimate } }] }];
  });
}
