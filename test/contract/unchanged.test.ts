import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { read } from '../engine/programmes.ts';
import { bytesOf } from './bytes.ts';
import recorded from './unchanged.json' with { type: 'json' };

/**
 * Digests (their first 16 digits) of forty futures of every plan, recorded with the engine as it was before trees had more than two sets,
 * S alleles, sexes and markers of origin: a document that asks for none of it gives the bytes it gave. Where figures of an example are
 * changed on purpose, they are recorded anew from the state before any other change; a change of the engine's results raises its version.
 */
describe('documents without the finer points of inheritance', () => {
  it.each(Object.entries(recorded))('%s gives the bytes it gave', (file, plans) => {
    const programme = read(JSON.parse(readFileSync(`sims/examples/${file}`, 'utf8')));
    const columns = new Simulator(programme).runs(
      programme.plans.map((_, p) => p),
      0,
      40,
    );
    expect(bytesOf(columns).map((digest) => digest.slice(0, 16))).toEqual(plans);
  });
});
