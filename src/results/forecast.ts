import { z } from 'zod';
import { hashOf } from './hash.ts';
import { STAGES, type GenerationOutlook, type Outlook } from './outlook.ts';

export const FORECAST_FORMAT = 'orchard-odds sealed forecast';
/** 1: chances alone; 2: with what each generation was to come to. */
export const FORECAST_VERSION = 2;
/** A file larger than this is refused unread, bytes. */
export const MOST_FORECAST_BYTES = 5_000_000;

const share = z.number().min(0).max(1);
const interval = { value: share, low: share, high: share };
const year = z.int().min(1500).max(3000);
/** Years reached by 1, 5 and 9 in 10 of the futures; null where that share is never reached. */
const years = z.strictObject({ p10: year.nullable(), p50: year.nullable(), p90: year.nullable() });
const amount = z.number().min(0).max(1e12);
const amounts = z.strictObject({ p10: amount, p50: amount, p90: amount });

/** Years in which a generation comes to something, in the order in which it does. */
export const REACHED = ['firstPollination', 'firstSeedling', 'firstFruit', 'firstPick'] as const;
export type Reached = (typeof REACHED)[number];

/** Of one round of a generation, over the futures that reached it (its first pick: that kept one). */
const generationSchema = z.strictObject({
  id: z.string().min(1).max(64),
  round: z.int().min(1).max(100),
  name: z.string().min(1).max(80),
  reached: share,
  firstPollination: years,
  firstSeedling: years,
  firstFruit: years,
  firstPick: years,
  stages: z.strictObject(Object.fromEntries(STAGES.map((stage) => [stage, amounts])) as Record<(typeof STAGES)[number], typeof amounts>),
});
export type ForecastGeneration = z.infer<typeof generationSchema>;

const bodySchema = z.strictObject({
  format: z.literal(FORECAST_FORMAT),
  version: z.union([z.literal(1), z.literal(FORECAST_VERSION)]),
  /** Calendar day on which it was sealed. */
  sealed: z.iso.date(),
  engine: z.string().min(1).max(40),
  word: z.string().min(1).max(100),
  runs: z.int().positive().max(1_000_000),
  /** SHA-256 of the programme it was forecast from. */
  programme: z.string().regex(/^[0-9a-f]{64}$/),
  title: z.string().min(1).max(120),
  startYear: year,
  lastYear: year,
  /** First spring that was forecast, where trees stood already; absent: the first of the programme. */
  from: year.optional(),
  plans: z
    .array(
      z.strictObject({
        id: z.string().min(1).max(64),
        mark: z.string().min(1).max(2),
        name: z.string().min(1).max(80),
        chance: z.strictObject(interval),
        guesses: z.strictObject({ low: share, high: share }).nullable(),
        byYear: z
          .array(z.strictObject({ year, ...interval }))
          .min(1)
          .max(1501),
        /** Absent in files of version 1. */
        generations: z.array(generationSchema).max(100).optional(),
      }),
    )
    .min(1)
    .max(8),
});
/** A forecast as it was on its day, with the seal that shows whether it is still the same. */
const forecastSchema = bodySchema.extend({ seal: z.string().regex(/^[0-9a-f]{64}$/) });

export type Forecast = z.infer<typeof forecastSchema>;

/**
 * Seals an outlook: its chances by year with their intervals, what each generation comes to, and a hash over all of it.
 * @param date calendar day, year-month-day
 * @param programme SHA-256 of the programme's canonical JSON
 * @param from first spring forecast, where trees stood already
 * @throws what the platform throws where it offers no SHA-256 (pages that did not come over https)
 */
export async function sealedForecast(outlook: Outlook, title: string, date: string, programme: string, from?: number): Promise<Forecast> {
  const { engine, word, runs, startYear, lastYear, plans } = outlook;
  const body: z.infer<typeof bodySchema> = {
    format: FORECAST_FORMAT,
    version: FORECAST_VERSION,
    sealed: date,
    engine,
    word,
    runs,
    programme,
    title,
    startYear,
    lastYear,
    ...(from === undefined ? {} : { from }),
    plans: plans.map(({ id, mark, name, chance, guesses, chanceByYear, generations }) => ({
      id,
      mark,
      name,
      chance: { value: chance.value, low: chance.low, high: chance.high },
      guesses: guesses && { low: guesses.low, high: guesses.high },
      byYear: chanceByYear.map(({ year: of, value, low, high }) => ({ year: of, value, low, high })),
      generations: generations.map(forecastGeneration),
    })),
  };
  return { ...body, seal: await hashOf(body) };
}

/** What a seal keeps of a generation; a computed forecast compares in the same form. */
export function forecastGeneration({ id, round, name, reached, stages, ...of }: GenerationOutlook): ForecastGeneration {
  const yearsOf = (key: Reached) => ({ p10: of[key].p10, p50: of[key].p50, p90: of[key].p90 });
  return {
    id,
    round,
    name,
    reached,
    firstPollination: yearsOf('firstPollination'),
    firstSeedling: yearsOf('firstSeedling'),
    firstFruit: yearsOf('firstFruit'),
    firstPick: yearsOf('firstPick'),
    stages: Object.fromEntries(
      STAGES.map((stage) => [stage, { p10: stages[stage].p10, p50: stages[stage].p50, p90: stages[stage].p90 }]),
    ) as ForecastGeneration['stages'],
  };
}

/** Readable JSON with a line end; the same bytes for the same forecast. */
export const forecastText = (forecast: Forecast): string => `${JSON.stringify(forecast, null, 2)}\n`;

/** Why a file is no forecast that can be relied on; the words for it are the screen's. */
export type ForecastFault =
  { readonly kind: 'large' | 'notText' | 'cut' | 'other' | 'form' | 'broken' | 'unchecked' } | { readonly kind: 'newer'; readonly version: number };
export type ForecastReading = { readonly ok: true; readonly forecast: Forecast } | { readonly ok: false; readonly fault: ForecastFault };

const headSchema = z.object({ format: z.literal(FORECAST_FORMAT), version: z.number() });
const fault = (kind: Exclude<ForecastFault['kind'], 'newer'>): ForecastReading => ({ ok: false, fault: { kind } });

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return undefined;
  }
}

/** Reads a sealed forecast and checks its seal. Never throws, repairs nothing. */
export async function readForecast(bytes: Uint8Array): Promise<ForecastReading> {
  if (bytes.length > MOST_FORECAST_BYTES) return fault('large');
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return fault('notText');
  }
  const data = parsed(text);
  if (data === undefined) return fault('cut');
  const head = headSchema.safeParse(data);
  if (!head.success) return fault('other');
  if (head.data.version > FORECAST_VERSION) return { ok: false, fault: { kind: 'newer', version: head.data.version } };
  const whole = forecastSchema.safeParse(data);
  if (!whole.success) return fault('form');
  const { seal, ...body } = whole.data;
  try {
    return (await hashOf(body)) === seal ? { ok: true, forecast: whole.data } : fault('broken');
  } catch {
    return fault('unchecked');
  }
}
