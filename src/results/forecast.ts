import { z } from 'zod';
import { hashOf } from './hash.ts';
import type { Outlook } from './outlook.ts';

export const FORECAST_FORMAT = 'orchard-odds sealed forecast';
export const FORECAST_VERSION = 1;
/** A file larger than this is refused unread, bytes. */
export const MOST_FORECAST_BYTES = 5_000_000;

const share = z.number().min(0).max(1);
const interval = { value: share, low: share, high: share };
const year = z.int().min(1500).max(3000);

const bodySchema = z.strictObject({
  format: z.literal(FORECAST_FORMAT),
  version: z.literal(FORECAST_VERSION),
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
      }),
    )
    .min(1)
    .max(8),
});
/** A forecast as it was on its day, with the seal that shows whether it is still the same. */
const forecastSchema = bodySchema.extend({ seal: z.string().regex(/^[0-9a-f]{64}$/) });

export type Forecast = z.infer<typeof forecastSchema>;

/**
 * Seals an outlook: its chances by year with their intervals, and a hash over all of it.
 * @param date calendar day, year-month-day
 * @param programme SHA-256 of the programme's canonical JSON
 * @throws what the platform throws where it offers no SHA-256 (pages that did not come over https)
 */
export async function sealedForecast(outlook: Outlook, title: string, date: string, programme: string): Promise<Forecast> {
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
    plans: plans.map(({ id, mark, name, chance, guesses, chanceByYear }) => ({
      id,
      mark,
      name,
      chance: { value: chance.value, low: chance.low, high: chance.high },
      guesses: guesses && { low: guesses.low, high: guesses.high },
      byYear: chanceByYear.map(({ year: of, value, low, high }) => ({ year: of, value, low, high })),
    })),
  };
  return { ...body, seal: await hashOf(body) };
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
