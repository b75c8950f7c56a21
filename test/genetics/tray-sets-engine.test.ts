import { describe, it } from 'vitest';
import { genesOf } from '../../src/genetics/family.ts';
import { qualifiesAt } from '../../src/genetics/copies.ts';
import { familyValue } from '../../src/genetics/tray/measured.ts';
import { trayOf } from '../../src/genetics/tray/tray.ts';
import type { MeasuredTrait, ShownTrait } from '../../src/model/programme.ts';
import { expectMean } from '../engine/agreement.ts';
import { Nursery } from '../engine/genomes.ts';
import { document, generation, kind, measured, plans, read, shown, tree, type Document } from '../engine/programmes.ts';

const FUTURES = 2500;
const SEEDLINGS = 8;
const base = (changes: Partial<Document>) => document({ plans: plans([generation('g', 1)]), ...changes });

/** Means over futures of what the engine makes of eight seedlings of the first tree × the second, held against the tray at 4 standard errors. */
function expectAgreement(made: Document): void {
  const programme = read(made);
  const [mother, father] = programme.trees;
  const trait = programme.traits.find((one) => one.type === 'shown') as ShownTrait;
  const tray = trayOf(programme, trait, mother!, father!);
  const nursery = new Nursery(made);
  const { compiled, stand, facts } = nursery;
  const { words, sets } = compiled;
  const seen = { right: [] as number[], none: [] as number[], value: [] as number[], variance: [] as number[] };
  for (let run = 0; run < FUTURES; run += 1) {
    nursery.future(run);
    const rule = compiled.shown[0]!.rules[facts.ruleOf[0]!]!;
    const family = Array.from({ length: SEEDLINGS }, () => stand.offset(nursery.breed(0, 1)));
    const share = (is: (at: number) => boolean) => family.filter(is).length / SEEDLINGS;
    seen.right.push(share((at) => qualifiesAt(rule, stand.genome, at, words, sets)));
    seen.none.push(
      share((at) => rule.genes.every((gene) => Array.from({ length: sets }, (_, h) => (stand.genome[at + h * words]! >>> gene) & 1).every((bit) => bit === 0))),
    );
    const scale = facts.scales[0];
    if (!scale) continue;
    const values = family.map((at) => scale.geneticOf(stand.genome, at, sets));
    const mean = values.reduce((sum, value) => sum + value, 0) / SEEDLINGS;
    seen.value.push(mean);
    seen.variance.push(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (SEEDLINGS - 1));
  }
  expectMean(seen.right, tray.shares.able + tray.shares.unable, `right, ${genesOf(trait.rules[0]!.needs).join()}`);
  expectMean(seen.none, tray.shares.without, 'none');
  const size = programme.traits.find((one): one is MeasuredTrait => one.type === 'measured');
  if (!size) return;
  const family = familyValue(programme, size, mother!, father!);
  expectMean(seen.value, family.mean, 'mean');
  expectMean(seen.variance, family.within ** 2, 'within');
}

describe('the tray agrees with the engine at 4 standard errors', () => {
  it('linked genes with four sets and double reduction; a measured trait with a gene of its own', () => {
    const many = kind({ ploidy: 4, inheritance: 'polysomic' });
    expectAgreement(
      base({
        kinds: [many],
        genes: [
          { id: 'u', name: 'u', group: 'one', position: 0, doubleReduction: 0.1 },
          { id: 'v', name: 'v', group: 'one', position: 25, doubleReduction: 0.1 },
          { id: 'w', name: 'w' },
        ],
        traits: [
          shown(1, {
            rules: [
              {
                name: 'both',
                weight: 1,
                needs: {
                  needs: 'all',
                  of: [
                    { gene: 'u', copies: 2 },
                    { gene: 'v', copies: 1 },
                  ],
                },
              },
            ],
          }),
          measured({ heritability: 0.8, genes: [{ gene: 'w', half: 1, dominance: 0.5 }] }),
        ],
        trees: [
          tree('a', { genes: { u: { copies: 2 }, v: { copies: 1 }, w: { copies: 1 } }, values: { size: 1 } }),
          tree('b', { genes: { u: { copies: 1, homologue: 'b' }, v: { copies: 1, homologue: 'b' }, w: { copies: 3 } }, values: { size: -1.5 } }),
        ],
      }),
    );
  });

  it('hidden dosage with six sets, weighed by what was seen and by test crosses, under a rule of three', () => {
    const needs = (copies: number) => ({ needs: 'all' as const, of: [{ gene: 'r', copies }] });
    expectAgreement(
      base({
        kinds: [kind({ ploidy: 6, inheritance: 'polysomic' })],
        genes: [{ id: 'r', name: 'r', doubleReduction: 0.05 }],
        traits: [
          shown(1, { seasonsShown: 0.8, falseShow: 0.05, rules: [1, 4, 6].map((copies) => ({ name: String(copies), weight: 1, needs: needs(copies) })) }),
        ],
        trees: [
          tree('a', { genes: { r: { frequency: 0.4 } }, seen: { red: { showed: 1, seasons: 4 } }, testCrosses: { red: { showed: 3, of: 9 } } }),
          tree('b', { genes: { r: { copies: 4 } } }),
        ],
      }),
    );
  });

  it('half of the pollen, of four sets, with a gene linked to S', () => {
    expectAgreement(
      base({
        kinds: [kind({ ploidy: 4, inheritance: 'polysomic', pollenRejection: 'gametophytic' })],
        genes: [{ id: 'r', name: 'r', group: 'S', position: 12 }],
        incompatibility: { group: 'S', position: 0, alleles: [] },
        traits: [shown(2)],
        trees: [tree('a', { s: 'S1S2S3S4', genes: { r: { copies: 1 } } }), tree('b', { s: 'S1S5S6S7', genes: { r: { copies: 1, homologue: 'b' } } })],
      }),
    );
  });
});
