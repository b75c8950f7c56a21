import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/engine/compile.ts';
import { Facts } from '../../src/engine/facts.ts';
import { DOMAIN } from '../../src/engine/keys.ts';
import { Stand } from '../../src/engine/stand.ts';
import { child, copiesOf, qualifies } from '../../src/genetics/genome.ts';
import { familyValue } from '../../src/genetics/tray/measured.ts';
import { chanceOfAtLeast } from '../../src/genetics/tray/needed.ts';
import { mixtureOf, trayOf } from '../../src/genetics/tray/tray.ts';
import { programmeSchema, type MeasuredTrait, type Programme, type ShownTrait } from '../../src/model/programme.ts';
import { rootOf, Stream } from '../../src/random/stream.ts';
import { expectMean, expectShare, expectVariance } from '../engine/agreement.ts';
import { document, generation, measured, plans, shown, tree, type Document } from '../engine/programmes.ts';

const TREE_SEEDLINGS = 20;

/** What one future of the engine makes of a family: its facts, its founders, its meiosis. */
interface Family {
  readonly rule: number;
  readonly right: number;
  readonly able: number;
  readonly none: number;
  readonly values: readonly number[];
}

/** Families of twenty of a pair (positions of trees), one a future; the trait is the programme's first shown one. Estimates at their means. */
function families(programme: Programme, mother: number, father: number, runs: number): Family[] {
  const compiled = compile({ ...programme, guessesAsTheyStand: true });
  const root = rootOf(programme.shuffleWord);
  const stand = new Stand(compiled);
  const facts = new Facts(compiled, new Stream(root), stand);
  const luck = new Stream(root);
  const trait = compiled.shown[0]!;
  const at = stand.offset(stand.firstIndividual);
  const { words } = compiled;
  return Array.from({ length: runs }, (_, run) => {
    facts.draw(DOMAIN.facts, run);
    luck.future(DOMAIN.luck, run).key(1);
    const rule = facts.ruleOf[0]!;
    const counts = { right: 0, able: 0, none: 0 };
    const values: number[] = [];
    for (let n = 0; n < TREE_SEEDLINGS; n += 1) {
      child(stand.genome, stand.offset(mother), stand.offset(father), at, words, luck, compiled.genes);
      const [a, b] = [stand.genome[at]!, stand.genome[at + words]!];
      const right = qualifies(trait.rules[rule]!, a, b);
      counts.right += +right;
      counts.able += +(luck.uniform() < facts.values[trait.canShowAt]! && right);
      counts.none += +trait.rules[rule]!.genes.every((gene) => copiesOf(a, b, gene) === 0);
      const scale = facts.scales[0];
      if (scale) values.push(scale.genetic(stand.genome[at + 1]!, stand.genome[at + words + 1]!, a, b));
    }
    return { rule, ...counts, values };
  });
}

const traitOf = (programme: Programme): ShownTrait => programme.traits.find((trait) => trait.type === 'shown')!;

function expectTray(programme: Programme, mother: number, father: number, runs: number): void {
  const tray = trayOf(programme, traitOf(programme), programme.trees[mother]!, programme.trees[father]!);
  const made = families(programme, mother, father, runs);
  const mean = (pick: (family: Family) => number, share: number, of = made) =>
    expectMean(
      of.map((family) => pick(family) / TREE_SEEDLINGS),
      share,
    );
  mean(({ able }) => able, tray.shares.able);
  mean(({ right, able }) => right - able, tray.shares.unable);
  mean(({ none }) => none, tray.shares.without);
  tray.rules.forEach((rule, r) => {
    const under = made.filter((family) => family.rule === r);
    expectShare(under.length, runs, rule.belief, 'belief');
    mean(({ able }) => able, rule.shares.able, under);
    mean(({ none }) => none, rule.shares.without, under);
  });
  // That seedlings share their parents shows in how often a whole tray holds r: far from Bin(20, share) where the parents are not known.
  const mixture = mixtureOf(tray, 'able');
  for (const r of [1, 3, 10])
    expectShare(made.filter(({ able }) => able >= r).length, runs, chanceOfAtLeast(r, TREE_SEEDLINGS, mixture), `at least ${String(r)}`);
}

describe('the tray agrees with the futures of the engine, at 4 standard errors', () => {
  const pear = programmeSchema.parse(JSON.parse(readFileSync(new URL('../../sims/examples/red-pear.json', import.meta.url), 'utf8')));

  it.each([
    ['source × not shown', 0, 1],
    ['source selfed', 0, 0],
    ['not shown, selfed', 1, 1],
    ['source × unknown of another kind', 0, 2],
  ] as const)('red pear: %s', (_, mother, father) => {
    expectTray(pear, mother, father, 6000);
  });

  it('linked genes of unknown phase, three rules, and a second trait that was seen on one of them', () => {
    const genes = (ids: string[], copies: 1 | 2) => ids.map((gene) => ({ gene, copies }));
    const programme = programmeSchema.parse(
      document({
        plans: plans([generation('g', 1)]),
        shuffleWord: 'linked',
        genes: [
          { id: 'u', name: 'u', group: 'one', position: 40 },
          { id: 'v', name: 'v' },
          { id: 'w', name: 'w', group: 'one', position: 22 },
        ],
        traits: [
          shown(1, {
            canShow: 0.8,
            seasonsShown: 0.7,
            falseShow: 0.1,
            rules: [
              { name: 'both', weight: 2, needs: { needs: 'all', of: genes(['u', 'w'], 1) } },
              { name: 'any twice', weight: 1, needs: { needs: 'any', of: genes(['u', 'v'], 2) } },
              { name: 'three in all', weight: 1, needs: { needs: 'total', genes: ['u', 'v', 'w'], copies: 3 } },
            ],
          }),
          shown(1, {
            id: 'leaf',
            name: 'leaf',
            seasonsShown: 0.9,
            falseShow: 0.2,
            rules: [
              { name: 'w', weight: 1, needs: { needs: 'all', of: genes(['w'], 1) } },
              { name: 'v', weight: 3, needs: { needs: 'all', of: genes(['v'], 2) } },
            ],
          }),
        ],
        trees: [
          tree('a', {
            genes: { u: { frequency: 0.3 }, v: { copies: 1 }, w: { frequency: 0.5 } },
            seen: { red: { showed: 3, seasons: 4 }, leaf: { showed: 2, seasons: 3 } },
          }),
          tree('b', {
            genes: { u: { copies: 1, homologue: 'b' }, v: { frequency: 0.4 }, w: { copies: 1, homologue: 'a' } },
            seen: { leaf: { showed: 0, seasons: 2 } },
          }),
        ],
      }),
    );
    expectTray(programme, 0, 1, 8000);
    expectTray(programme, 0, 0, 8000);
    expectTray(programme, 1, 1, 8000);
  });

  describe('measured', () => {
    /** One copy of 64 is worth ¼ when V_G = 1: stated values lie on whole copies. */
    const programmeOf = (trees: Document['trees']) =>
      programmeSchema.parse(document({ plans: plans([generation('g', 1)]), traits: [shown(2), measured()], trees }));

    it.each([
      ['both stated', [tree('a', { values: { size: 2 } }), tree('b', { values: { size: -3.5 } })], 0, 1],
      ['one stated', [tree('a', { values: { size: 2 } }), tree('b')], 0, 1],
      ['neither stated', [tree('a'), tree('b')], 0, 1],
      ['stated, selfed', [tree('a', { values: { size: 3 } })], 0, 0],
      ['not stated, selfed', [tree('a')], 0, 0],
    ] as const)('family mean and spread: %s', (_, trees, mother, father) => {
      const programme = programmeOf([...trees]);
      const trait = programme.traits.find((one) => one.type === 'measured') as MeasuredTrait;
      const family = familyValue(programme, trait, programme.trees[mother]!, programme.trees[father]!);
      const made = families(programme, mother, father, 4000).map(({ values }) => {
        const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
        return { mean, variance: values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1) };
      });
      expect(made).toHaveLength(4000);
      const means = made.map(({ mean }) => mean);
      expectMean(means, family.mean, 'mean');
      expectMean(
        made.map(({ variance }) => variance),
        family.within ** 2,
        'within',
      );
      expectVariance(means, family.between ** 2 + family.within ** 2 / TREE_SEEDLINGS, 'between');
    });
  });
});
