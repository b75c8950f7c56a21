/** Words of the pictures under "more pictures": years against trees, why futures fail, from flower to pick. */
import { inTenWords, percent, percentNumber, whole } from './charts.ts';

const NB = '\u00a0';
const small = (share: number): string => (share > 0 && share < 0.005 ? 'under 1' : percentNumber(share));

export const cloudText = {
  title: 'Years against trees',
  name: 'Year of a proven tree against seedlings raised',
  intro:
    'The inner outline holds half of the futures that succeed, the outer 85 in 100; the letter sits on the middle values. Right of the rule: the futures without a tree, wider where more of them raised that many.',
  seedlings: (n: number) => `${whole(n)} seedlings`,
  count: whole,
  half: (year: number, seedlings: number) => `half of its successes by ${String(year)}, ${whole(seedlings)} seedlings`,
  label: (name: string) => `${name}: `,
  none: (last: number) => `No tree by ${String(last)}, of 100 futures`,
  noTree: (share: number) => `no tree in ${small(share)} of 100 futures`,
  noTreeNumber: small,
  few: 'too few successes to draw',
  summary: (plans: readonly { name: string; year: number | null; seedlings: number | null }[]) =>
    `${plans.map(({ name, year, seedlings }) => (year === null || seedlings === null ? `${name}: never` : `${name}: half of its successes by ${String(year)}, with ${whole(seedlings)} seedlings`)).join('; ')}.`,
  heads: ['Plan', 'Successes, of 100 futures', 'Half of them by', 'Seedlings, when it works', 'Seedlings, when it does not'],
  missing: 'This picture needs every single future: it comes when all futures are counted.',
};

const FAILURE_WORDS: Readonly<Record<string, { long: string; short: string; mid: string }>> = {
  noneGoodEnough: { long: 'None good enough', short: 'Too poor', mid: 'none good enough' },
  seedlingsDied: { long: 'Seedlings died', short: 'Died', mid: 'seedlings died' },
  stillWaiting: { long: 'Trees still too young', short: 'Too young', mid: 'trees still too young' },
  onlyTreeLost: { long: 'The only pick was lost', short: 'Pick lost', mid: 'the only pick lost' },
  noFruit: { long: 'No fruit set', short: 'No fruit', mid: 'no fruit set' },
  noSeedling: { long: 'No seedling came up', short: 'No seedling', mid: 'no seedling' },
  noRoom: { long: 'No room to plant', short: 'No room', mid: 'no room' },
};

export const failText = {
  title: 'Why futures fail',
  intro: 'Of 100 futures of each plan.',
  name: 'Why futures fail',
  success: { long: 'A proven tree', short: 'Proven' },
  failure: (reason: string) => FAILURE_WORDS[reason] ?? { long: reason, short: reason, mid: reason },
  percent,
  number: small,
  also: (parts: readonly { reason: string; share: number }[], alone: boolean) =>
    `${alone ? '' : 'In the small boxes: '}${parts.map(({ reason, share }) => `${failText.failure(reason).mid} ${small(share)}`).join(' · ')}`,
  summary: (plans: readonly { name: string; chance: number; reason: string | null; share: number }[]) =>
    `${plans.map(({ name, chance, reason, share }) => `${name}: a proven tree ${inTenWords(chance)}${reason === null ? '' : `; most often fails because: ${failText.failure(reason).mid} (${small(share)} in 100)`}`).join('. ')}.`,
};

const STAGE_WORDS: Readonly<Record<string, string>> = {
  flowers: 'flowers',
  fruits: 'fruits',
  seeds: 'seeds',
  seedlings: 'seedlings',
  aliveAtGraft: 'alive to graft',
  fruiting: 'fruiting',
  showing: 'showing it',
  kept: 'kept',
};

const ONE: Readonly<Record<string, string>> = { flowers: 'flower', fruits: 'fruit', seeds: 'seed', seedlings: 'seedling' };

export const funnelText = {
  title: 'From flower to pick',
  intro:
    'How many are left at each step, among the futures that reach the generation: the dot is the middle value, 8 in 10 futures lie within the bar. Each step of the scale is ten times the last.',
  name: 'From flower to pick',
  stage: (stage: string) => STAGE_WORDS[stage] ?? stage,
  count: (p10: number, p50: number, p90: number) =>
    p10 === p90 ? { middle: whole(p50), range: '' } : { middle: whole(p50), range: `${whole(p10)}–${whole(p90)}` },
  tick: (n: number) => (n >= 1e6 ? `${whole(n / 1e6)}${NB}million` : whole(n)),
  /** "64 seedlings", "1 flower", "3 kept". */
  amount: (stage: string, n: number) => `${funnelText.tick(n)} ${n === 1 ? (ONE[stage] ?? funnelText.stage(stage)) : funnelText.stage(stage)}`,
  summary: (plans: readonly { name: string; first: string; last: string }[]) =>
    `${plans.map(({ name, first, last }) => `${name}: from ${first} to ${last}`).join('; ')}.`,
  heads: ['Plan', 'Generation', 'Step', 'Middle', '8 in 10 between'],
};
