import { learnInheritance, type LearnedInheritance } from '../../src/seasonlog/inheritance.ts';
import { learnRates } from '../../src/seasonlog/learned.ts';
import type { Learned, LearnedRates } from '../../src/seasonlog/learned-types.ts';
import type { Programme } from '../../src/model/programme.ts';
import { amount, candidates, learnable, learnedText, leftOut, myCounts, settling, speaksFor } from '../../src/text/log-learned.ts';

export const LEARNED_FORMAT = 'orchard-odds learned';
export const LEARNED_VERSION = 1;

/** What the season log of a programme teaches, as other programs read it. */
export interface LearnedDocument extends LearnedRates {
  readonly format: typeof LEARNED_FORMAT;
  readonly version: typeof LEARNED_VERSION;
  readonly title: string;
  readonly inheritance: readonly LearnedInheritance[];
}

export function learnedDocument(programme: Programme): LearnedDocument {
  const inheritance = learnInheritance(programme);
  return { format: LEARNED_FORMAT, version: LEARNED_VERSION, title: programme.title, ...learnRates(programme, myCounts), inheritance };
}

/** Readable JSON with a line end; the same bytes for the same log. */
export const learnedJson = (document: LearnedDocument): string => `${JSON.stringify(document, null, 2)}\n`;

/** Trees named in the text; the JSON has them all. */
const MOST_LOSERS = 12;

export function learnedReport({ title, rates, leftOut: out, inheritance }: LearnedDocument): string {
  const lines = [
    title,
    '',
    learnedText.rates,
    ...(rates.length === 0 ? [`  ${learnedText.nothing}`] : rates.flatMap(rateLines)),
    ...(out.length === 0
      ? []
      : ['', learnedText.leftOut, ...out.map(({ name, why, about }) => `  ${name}: ${leftOut[why]}${about === '' ? '' : ` (${about})`}`)]),
    ...inheritance.flatMap((one) => ['', ...inheritanceLines(one)]),
  ];
  return `${lines.join('\n')}\n`;
}

function rateLines({ what, of, scale, before, after, counts, nextSpring, used, wave }: Learned): string[] {
  const name = [of.name, of.route ?? '', learnable[what]].filter((part) => part !== '').join(', ');
  const range = ({ low, high }: { low: number; high: number }): string => learnedText.between(amount(low, scale), amount(high, scale));
  const now = before === null ? '' : `${learnedText.now} ${amount(before.mean, scale)}; `;
  return [
    `  ${name}${used ? ` (${learnedText.used})` : ''}`,
    `    ${now}${learnedText.counts} ${amount(after.mean, scale)} ${range(after)}`,
    `    ${learnedText.counted(counts.hits, counts.of, counts.springs)}, ${myCounts(counts.from, counts.to)}`,
    ...(nextSpring ? [`    ${learnedText.anotherSpring(amount(nextSpring.low, scale), amount(nextSpring.high, scale))}`] : []),
    ...(wave ? [`    ${learnedText.wave(wave.winter, wave.took)}`] : []),
  ];
}

function inheritanceLines({ name, families, rules, further, settled, settling: more, losers }: LearnedInheritance): string[] {
  const best = rules.reduce((most, rule) => (rule.after > most.after ? rule : most)).name;
  const family = families.find(({ batch }) => batch === more?.batch)?.name ?? '';
  return [
    learnedText.inheritance(name),
    ...families.map((one) => `  ${learnedText.family(one.name, one.showed, one.of)}`),
    ...rules.map((rule) => `  ${learnedText.weight(rule.name, rule.before, rule.after)}`),
    ...further.map(({ key, factor }) => `  ${learnedText.further(candidates[key], speaksFor(factor))}`),
    `  ${settling(settled, more && { ...more, family }, best)}`,
    ...(losers.length === 0 ? [] : [`  ${learnedText.losers}`]),
    ...losers.slice(0, MOST_LOSERS).map((one) => `    ${learnedText.loser(one.tag, one.batchName, one.showed, one.seasons, one.carries)}`),
    ...(losers.length > MOST_LOSERS ? [`    ${learnedText.moreLosers(losers.length - MOST_LOSERS)}`] : []),
  ];
}
