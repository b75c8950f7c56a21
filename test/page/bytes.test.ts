import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, inject, it } from 'vitest';
import example from '../../sims/examples/red-pear.json';
import { parseProgramme } from '../../src/model/read.ts';
import type { Programme } from '../../src/model/programme.ts';
import type { Request } from '../../src/workers/protocol.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { poolRunner } from '../../src/workers/runner.ts';
import { visits } from './visit.ts';

const visit = visits();
const RUNS = 300;
const SETS = 4;
const FUTURES = 50;

interface Bytes {
  readonly plans: readonly { readonly ints: string; readonly amounts: string; readonly byYear: string }[];
  readonly provenBy: string;
}

const base64 = ({ buffer, byteOffset, byteLength }: ArrayBufferView) => Buffer.from(buffer as ArrayBuffer, byteOffset, byteLength).toString('base64');

async function inNode(programme: Programme, plans: readonly number[]): Promise<Bytes> {
  const runner = poolRunner(() => inlineThread(), 1);
  runner.load(programme);
  const columns = await runner.runs(plans, 0, RUNS);
  const provenBy = await runner.factSets(plans, 0, SETS, FUTURES);
  runner.end();
  return {
    plans: columns.map(({ ints, amounts, byYear }) => ({ ints: base64(ints), amounts: base64(amounts), byYear: base64(byYear) })),
    provenBy: base64(provenBy),
  };
}

describe('the built page', () => {
  it('gives the same bytes in Chromium as in Node, for every plan, in the futures and over the guesses', async () => {
    const reading = parseProgramme(example);
    if (!reading.ok) throw new Error('The example cannot be read.');
    const { programme } = reading;
    const plans = programme.plans.map((_, p) => p);
    const [worker] = readdirSync(fileURLToPath(new URL('../../dist/assets', import.meta.url))).filter((name) => /^browser-host-.*\.js$/.test(name));
    const requests: Request[] = [
      { type: 'load', programme },
      { type: 'runs', id: 1, plans, from: 0, runs: RUNS },
      { type: 'factSets', id: 2, plans, from: 0, sets: SETS, futures: FUTURES },
    ];
    const page = await visit({ untilRest: false });
    const inChromium = await page.evaluate(
      ({ address, asked }) =>
        new Promise<Bytes>((resolve, reject) => {
          const text = (array: Int32Array | Float64Array | Float32Array) => {
            const bytes = new Uint8Array(array.buffer, array.byteOffset, array.byteLength);
            let letters = '';
            for (const byte of bytes) letters += String.fromCharCode(byte);
            return btoa(letters);
          };
          const thread = new Worker(address, { type: 'module' });
          let columns: { ints: string; amounts: string; byYear: string }[] = [];
          thread.onerror = ({ message }) => reject(new Error(message));
          thread.onmessage = ({ data }: MessageEvent<import('../../src/workers/protocol.ts').Reply>) => {
            if (data.type === 'failed') reject(new Error(data.message));
            else if (data.type === 'runs')
              columns = data.columns.map(({ ints, amounts, byYear }) => ({ ints: text(ints), amounts: text(amounts), byYear: text(byYear) }));
            else if (data.type === 'factSets') {
              resolve({ plans: columns, provenBy: text(data.provenBy) });
              thread.terminate();
            }
          };
          for (const request of asked) thread.postMessage(request);
        }),
      { address: `${inject('url')}assets/${worker ?? ''}`, asked: requests },
    );
    const here = await inNode(programme, plans);
    expect(here.plans.length).toBe(4);
    here.plans.forEach(({ ints, amounts, byYear }, p) => {
      // Not nothing against nothing: thousands of bytes, not all of them nought.
      expect(ints.length).toBeGreaterThan(RUNS * 15);
      expect(ints).toMatch(/[^A=]/);
      expect(inChromium.plans[p]?.ints === ints, `ints of plan ${String(p)}`).toBe(true);
      expect(inChromium.plans[p]?.amounts === amounts, `amounts of plan ${String(p)}`).toBe(true);
      expect(inChromium.plans[p]?.byYear === byYear, `amounts by year of plan ${String(p)}`).toBe(true);
    });
    expect(inChromium.provenBy === here.provenBy, 'proven by year, over the guesses').toBe(true);
  });
});
