/** Words of what the season log teaches. */

/** Note of the source of a learned number, as it goes into the programme. */
export const myCounts = (from: number, to: number): string => (from === to ? `my counts ${String(from)}` : `my counts ${String(from)}–${String(to)}`);

/** Names of the estimates that counts can teach. */
export const learnable = {
  set: 'Fruit set',
  germination: 'Seeds that come up',
  weakShare: 'Seedlings that are weak',
  halfDeadBy: 'Half of the weak are dead by',
  takeTender: 'Grafts that take, tender wood',
  takeRipe: 'Grafts that take, ripe wood',
  firstWinter: 'Lost in the first winter',
  laterWinters: 'Lost each later winter',
  halfFruitBy: 'Half have fruited by',
  ninetyFruitBy: '9 in 10 have fruited by',
  neverFruits: 'Never fruits',
  luckOfSet: 'Luck of the spring, fruit set',
  luckOfGermination: 'Luck of the spring, seeds that come up',
} as const;

/** Why counts were left out; what it concerns follows. */
export const leftOut = {
  apart: 'kept out of the rates, as you asked',
  noKind: 'the kind of a parent is not said',
  noEntry: 'the programme has no cross entry for',
  doesNotAddUp: 'does not add up',
  eventLoss: 'lost to something that befell the batch, so not counted against the rates',
  noGrafting: 'the age of the grafts or their stock is not said',
  noWeakness: 'weak seedlings of a cross for which the programme knows no weakness',
  weakCross: 'deaths of a cross with weak seedlings are counted as weakness, not as winter losses',
  graftedWeak: 'grafted seedlings: their deaths teach no loss on own roots',
  noLastLook: 'nobody wrote down until when it was looked at',
  graftAge: 'grafted, but the age of the graft is not said',
  noRule: 'no rule of inheritance speaks to it',
  unknownParents: 'nothing is known of what its parents may carry',
} as const;

/** Explanations that were tried beside those of the programme. */
export const candidates = {
  oneCopy: 'one copy is enough',
  twoCopies: 'two copies needed',
  complementary: 'two genes, one copy of each',
  duplicate: 'two genes, one copy of either',
} as const;

/**
 * How far what was seen speaks for one explanation against another, in words. Steps after Kass & Raftery (1995) J. Am. Stat. Assoc. 90:773–795:
 * 3, 20 and 150 times.
 */
export function speaksFor(factor: number): string {
  if (factor < 1) return speaksFor(1 / factor).replace(' for it', ' against it');
  if (factor < 3) return 'says next to nothing for it';
  if (factor < 20) return 'speaks for it';
  return factor < 150 ? 'speaks clearly for it' : 'speaks very clearly for it';
}

const tenths = (chance: number): string => `${String(Math.round(chance * 10))} times in 10`;

/** Whether a rule stands, or what would settle it. */
export function settling(
  settled: boolean,
  more: { readonly seedlings: number; readonly chance: number; readonly family: string } | null,
  best: string,
): string {
  if (settled) return `Settled at nine to one or better: ${best}.`;
  if (!more) return 'There is only one explanation to weigh.';
  if (more.chance < 0.05) return `Cannot tell yet, and even ${String(more.seedlings)} more seedlings of these families would hardly settle it.`;
  return `Cannot tell yet: ${String(more.seedlings)} more of ${more.family} would settle it ${tenths(more.chance)}.`;
}

const percent = (share: number): string => `${(100 * share).toFixed(share < 0.0995 ? 1 : 0)} %`;

/** A learned amount in the unit of its estimate. */
export const amount = (value: number, scale: 'share' | 'months' | 'years'): string => (scale === 'share' ? percent(value) : `${value.toFixed(1)} ${scale}`);

export const learnedText = {
  rates: 'What the counts say',
  nothing: 'The log holds no counts that a rate can be learned from.',
  now: 'the programme says',
  counts: 'with your counts',
  between: (low: string, high: string) => `(8 times in 10 between ${low} and ${high})`,
  anotherSpring: (low: string, high: string) => `another spring: ${low} to ${high}, 8 times in 10`,
  used: 'in the programme already',
  counted: (hits: number, of: number, springs: number) =>
    of === 0 ? `from ${String(springs)} springs and pairs` : `${String(hits)} of ${String(of)}, counted ${springs === 1 ? 'once' : `${String(springs)} times`}`,
  wave: (winter: number, took: number) => `winter ${String(winter)} took about ${percent(took)} at once; the loss of other winters is learned without it`,
  leftOut: 'Left out',
  inheritance: (trait: string) => `Which inheritance fits: ${trait}`,
  family: (name: string, showed: number, of: number) => `${name}: ${String(showed)} of ${String(of)} showed it`,
  weight: (name: string, before: number, after: number) => `${name}: believed ${percent(before)} before, ${percent(after)} now`,
  further: (name: string, words: string) => `${name}: what was seen ${words}`,
  losers: 'Trees that did not show it, and the chance that they carry it',
  loser: (tag: string, batch: string, showed: number, seasons: number, carries: number) =>
    `${tag} (${batch}): ${String(showed)} of ${String(seasons)} seasons, carries it ${tenths(carries)}`,
  moreLosers: (more: number) => `and ${String(more)} more`,
} as const;
