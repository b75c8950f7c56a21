import { createHash } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Outlook } from '../../src/results/outlook.ts';
import { forecastText, readForecast, sealedForecast, type Forecast } from '../../src/results/forecast.ts';
import { hashOf } from '../../src/results/hash.ts';
import { sealed as words } from '../../src/text/tell.ts';
import { exampleOf, outlookFor } from '../handout/sample.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
let outlook: Outlook;
let forecast: Forecast;
let text: string;
beforeAll(async () => {
  const peach = exampleOf('peach-quick');
  outlook = await outlookFor(peach, 120);
  forecast = await sealedForecast(outlook, peach.title, '2026-11-25', await hashOf(peach));
  text = forecastText(forecast);
}, 60_000);

const faultOf = async (data: Uint8Array | string): Promise<string> => {
  const reading = await readForecast(typeof data === 'string' ? bytes(data) : data);
  return reading.ok ? 'ok' : reading.fault.kind;
};

describe('a sealed forecast', () => {
  it('opens as it was sealed, with every plan year by year', async () => {
    const reading = await readForecast(bytes(text));
    expect(reading.ok && reading.forecast).toEqual(forecast);
    expect(forecast.plans.map(({ byYear }) => byYear.map(({ year, value }) => [year, value]))).toEqual(
      outlook.plans.map(({ chanceByYear }) => chanceByYear.map(({ year, value }) => [year, value])),
    );
    expect(forecast).toMatchObject({ sealed: '2026-11-25', word: outlook.word, engine: outlook.engine, runs: 120 });
  });

  it('of version 1, with chances alone, still opens', async () => {
    const { seal: _seal, ...body } = forecast;
    const old = { ...body, version: 1 as const, plans: body.plans.map(({ generations: _generations, ...plan }) => plan) };
    const reading = await readForecast(bytes(forecastText({ ...old, seal: await hashOf(old) })));
    expect(reading.ok && reading.forecast.plans.map(({ generations }) => generations)).toEqual(old.plans.map(() => undefined));
  });

  it('keeps what each generation was to come to', () => {
    const [first] = outlook.plans;
    expect(forecast.plans[0]?.generations?.map(({ id, firstFruit, stages }) => [id, firstFruit.p50, stages.seedlings.p90])).toEqual(
      first?.generations.map(({ id, firstFruit, stages }) => [id, firstFruit.p50, stages.seedlings.p90]),
    );
  });

  it('bears the SHA-256 of its canonical JSON, by Node’s own hand', () => {
    const sorted = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(sorted);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .sort(([a], [b]) => (a < b ? -1 : 1))
          .map(([name, part]) => [name, sorted(part)]),
      );
    };
    const { seal, ...body } = forecast;
    expect(seal).toBe(
      createHash('sha256')
        .update(JSON.stringify(sorted(body)))
        .digest('hex'),
    );
  });

  it('is refused with any one digit of a chance, year, date or word changed', async () => {
    const places = [...text.matchAll(/\d/g)].map(({ index }) => index);
    for (const at of places.filter((_, i) => i % 53 === 0)) {
      const digit = text.charAt(at) === '1' ? '2' : '1';
      const changed = `${text.slice(0, at)}${digit}${text.slice(at + 1)}`;
      expect(await faultOf(changed), changed.slice(at - 20, at + 20)).not.toBe('ok');
    }
    expect(await faultOf(text.replace(forecast.word, `${forecast.word}s`))).toBe('broken');
  });

  it.each<[string, () => string | Uint8Array, string]>([
    ['cut short', () => text.slice(0, 300), 'cut'],
    ['nothing at all', () => '', 'cut'],
    ['no forecast', () => '{"format":"orchard-odds programme","version":2}', 'other'],
    ['a list', () => '[]', 'other'],
    ['of a version to come', () => text.replace('"version": 2', '"version": 3'), 'newer'],
    ['with a key more', () => text.replace('{', '{ "extra": 1,'), 'form'],
    ['without its plans', () => JSON.stringify({ ...forecast, plans: undefined }), 'form'],
    [
      'with a chance beyond all',
      () => JSON.stringify({ ...forecast, plans: forecast.plans.map((plan) => ({ ...plan, chance: { ...plan.chance, value: 7 } })) }),
      'form',
    ],
    ['bytes that are no text', () => Uint8Array.from([0xff, 0xfe, 0x00]), 'notText'],
    ['6 MB', () => new Uint8Array(6_000_000).fill(0x20), 'large'],
  ])('%s: refused, in a sentence that says what to do', async (_, data, kind) => {
    const reading = await readForecast(typeof data() === 'string' ? bytes(String(data())) : Uint8Array.from(data() as Uint8Array));
    expect(reading.ok ? 'ok' : reading.fault.kind).toBe(kind);
    if (reading.ok) return;
    const said = reading.fault.kind === 'newer' ? words.damaged.newer(reading.fault.version) : words.damaged[reading.fault.kind];
    expect(said).toMatch(/^It .*(Choose|Fetch|Open) .*\.$/);
  });
});
