import { describe, expect, it } from 'vitest';
import { carrierIfNotShown, hardyWeinberg } from '../../src/genetics/population.ts';
import { rulingOf } from '../../src/genetics/tray/rulings.ts';
import type { Programme, ShownTrait } from '../../src/model/programme.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { RuleGenes } from '../../src/seasonlog/gametes.ts';
import { learnInheritance, type LearnedInheritance } from '../../src/seasonlog/inheritance.ts';
import { learnRates } from '../../src/seasonlog/learned.ts';
import { withPuts } from '../../src/seasonlog/puts.ts';
import { chanceToSettle, whatSettles } from '../../src/seasonlog/settle.ts';
import { binomialPmf } from '../../src/statistics/binomial.ts';
import { shown, tree, type Document, type ShownDocument } from '../engine/programmes.ts';
import { batch, judged, tenSeasons, withLog, type LoggedDocument } from './orchard.ts';

const RULES: ShownDocument['rules'] = [
  { name: 'one copy', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies: 1 }] } },
  { name: 'two copies', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies: 2 }] } },
  {
    name: 'complementary',
    weight: 1,
    needs: {
      needs: 'all',
      of: [
        { gene: 'r', copies: 1 },
        { gene: 'd', copies: 1 },
      ],
    },
  },
  {
    name: 'duplicate',
    weight: 1,
    needs: {
      needs: 'any',
      of: [
        { gene: 'r', copies: 1 },
        { gene: 'd', copies: 1 },
      ],
    },
  },
];

const hybrid = tree('hybrid', { genes: { r: { copies: 1 }, d: { copies: 1 } } });
const plain = tree('plain', { genes: { r: { copies: 0 }, d: { copies: 0 } } });
const sure = (rules: ShownDocument['rules'] = RULES): Partial<Document> => ({
  traits: [shown(1, { rules })],
  trees: [hybrid, plain, tree('hedgerow'), tree('bell')],
});

const trees = (showing: number, not: number): LoggedDocument[] => [
  ...Array.from({ length: showing }, (_, i) => judged(`s${String(i)}`, 2033, 1, 1)),
  ...Array.from({ length: not }, (_, i) => judged(`n${String(i)}`, 2033, 0, 1)),
];
const selfed = (showing: number, not: number) => batch('family', 2027, { seed: { tree: 'hybrid' }, pollen: 'self', trees: trees(showing, not) });
const crossed = (showing: number, not: number) => batch('family', 2027, { seed: { tree: 'hybrid' }, pollen: { tree: 'plain' }, trees: trees(showing, not) });

function only(programme: Programme): LearnedInheritance {
  const [first, ...more] = learnInheritance(programme);
  expect(more).toEqual([]);
  return first!;
}
const leading = ({ rules }: LearnedInheritance): string => rules.reduce((most, rule) => (rule.after > most.after ? rule : most)).name;

describe('published ratios', () => {
  it('3 : 1, violet and white peas, 705 : 224 (Mendel 1866; counts seen)', () => {
    expect(leading(only(withLog([selfed(705, 224)], sure())))).toBe('one copy');
  });

  it('1 : 3, the same peas, if white is the one that is wanted (Mendel 1866)', () => {
    expect(leading(only(withLog([selfed(224, 705)], sure())))).toBe('two copies');
  });

  it('9 : 7, coloured and white sweet peas, 382 : 269 (Bateson, Saunders & Punnett 1906; from memory)', () => {
    const learned = only(withLog([selfed(382, 269)], sure()));
    expect(leading(learned)).toBe('complementary');
    expect(learned.settled).toBe(true);
  });

  it('15 : 1, two duplicate genes as in shepherd’s purse (Shull 1914; the ratio, on 240 plants: derived)', () => {
    expect(leading(only(withLog([selfed(225, 15)], sure())))).toBe('duplicate');
  });

  it('1 : 1, round and angular peas of a test cross, 106 : 102 (Mendel 1866; from memory): one copy, and no rule of two copies', () => {
    const learned = only(withLog([crossed(106, 102)], sure()));
    expect(leading(learned)).toBe('one copy');
    expect(learned.rules.find(({ name }) => name === 'two copies')!.after).toBeLessThan(1e-9);
    // One of two complementary genes, three of four of duplicate ones: both are far off.
    expect(learned.rules.find(({ name }) => name === 'complementary')!.factor).toBeLessThan(1e-3);
  });

  it('24 resistant of 67 apple seedlings where 1 : 1 is expected (Vf, Salva × Jonathan): unusual, and a share that can show it explains it', () => {
    const learned = only(withLog([crossed(24, 43)], sure(RULES.slice(0, 1))));
    expect(learned.rules[0]!.after).toBe(1);
    // Nothing silently replaces what is believed: with one rule there is nothing to weigh.
    expect(learned.puts).toEqual([]);
    expect(learned.further.map(({ key }) => key).sort()).toEqual(['complementary', 'duplicate', 'twoCopies']);
  });
});

describe('weights', () => {
  it('are Bayes’ rule on the binomial where parents are known, a fifth of the belief on a share of able trees that may be anything', () => {
    const [showing, not] = [13, 11];
    const { rules } = only(withLog([selfed(showing, not)], sure()));
    const chance = (q: number): number => {
      const under = (able: number): number => binomialPmf(showing, showing + not, q * (able * 0.999 + (1 - able) * 0.001) + (1 - q) * 0.001);
      return 0.8 * under(1) + Array.from({ length: 20 }, (_, i) => (i + 0.5) / 20).reduce((sum, able) => sum + 0.01 * under(able), 0);
    };
    const exact = [3 / 4, 1 / 4, 9 / 16, 15 / 16].map(chance);
    const total = exact.reduce((sum, one) => sum + one, 0);
    rules.forEach(({ after }, r) => expect(after).toBeCloseTo(exact[r]! / total, 9));
    expect(rules.reduce((sum, { after }) => sum + after, 0)).toBeCloseTo(1, 12);
    rules.forEach(({ factor }, r) => expect(factor).toBeCloseTo(exact[r]! / Math.max(...exact.filter((_, other) => other !== r)), 6));
  });

  it('stay as they were where families were not looked at for the trait', () => {
    expect(learnInheritance(withLog([batch('a', 2027, { trees: [{ tag: '1', firstFruit: 2033 }] })]))).toEqual([]);
  });

  it('count a parent once: what one family says of a shared parent tells on the other', () => {
    const mother = tree('mother', { genes: { r: { frequency: 0.5 } } });
    const tester = tree('tester', { genes: { r: { copies: 0 } } });
    const changes: Partial<Document> = { traits: [shown(1)], trees: [mother, tester, tree('hedgerow'), tree('bell')] };
    const family = (id: string, year: number, list: LoggedDocument[]) => batch(id, year, { seed: { tree: 'mother' }, pollen: { tree: 'tester' }, trees: list });
    const alone = only(withLog([family('one', 2027, trees(0, 2))], changes));
    const both = only(withLog([family('one', 2027, trees(0, 2)), family('two', 2028, trees(0, 8))], changes));
    const carries = (learned: LearnedInheritance) => learned.losers.find(({ batch: id }) => id === 'one')!.carries;
    // Nothing showed in ten: the mother hardly carries it, so neither do the two.
    expect(carries(both)).toBeLessThan(carries(alone));
  });

  it('of new weights fit the document', () => {
    const programme = tenSeasons();
    const learned = only(programme);
    const trait = programme.traits[0] as ShownTrait;
    const changed = parseProgramme(withPuts(programme, learned.puts));
    if (!changed.ok) throw new Error('The weights do not fit.');
    const taken = changed.programme.traits[0] as ShownTrait;
    const total = taken.rules.reduce((sum, { weight }) => sum + weight, 0);
    // Weights are put with three digits, none under a thousandth.
    taken.rules.forEach(({ weight, weightBefore }, r) => {
      expect(weight / total).toBeCloseTo(learned.rules[r]!.after, 3);
      expect(weightBefore).toBe(trait.rules[r]!.weight);
    });
  });

  it('once taken, are not weighed with the same counts again, and go back to what was believed', () => {
    const programme = tenSeasons();
    const learned = only(programme);
    expect(learned).toMatchObject({ used: false, backs: [] });
    const taken = parseProgramme(withPuts(programme, learned.puts));
    if (!taken.ok) throw new Error('The weights do not fit.');
    const again = only(taken.programme);
    expect(again.used).toBe(true);
    expect(again.rules).toEqual(learned.rules);
    expect(withPuts(taken.programme, again.backs)).toEqual(programme);
    // A weight of one's own in place of the taken one is no longer that of the counts.
    const own = taken.programme.traits.map((one) => (one.type === 'shown' ? { ...one, rules: one.rules.map((rule) => ({ ...rule, weight: 1 })) } : one));
    expect(only({ ...taken.programme, traits: own }).used).toBe(false);
  });

  it('leave the rates alone', () => {
    const programme = withLog([selfed(5, 3)], sure());
    expect(learnRates(programme, () => 'note').rates.map(({ what }) => what)).toEqual(['halfFruitBy', 'ninetyFruitBy', 'neverFruits']);
  });
});

describe('what would settle it', () => {
  it('is every outcome weighed, as SciPy 1.17.1 has it', () => {
    expect(chanceToSettle([0.5, 0.5], [[{ chance: 0.5, weight: 1 }], [{ chance: 0.75, weight: 1 }]], 20)).toBeCloseTo(0.6199151649989, 9);
    const three = [
      [
        { chance: 0.5, weight: 0.6 },
        { chance: 0.7, weight: 0.4 },
      ],
      [{ chance: 0.75, weight: 1 }],
      [
        { chance: 0.1, weight: 0.5 },
        { chance: 0.3, weight: 0.5 },
      ],
    ];
    expect(chanceToSettle([0.5, 0.3, 0.2], three, 30)).toBeCloseTo(0.3309068056452, 9);
  });

  it('names the fewest that do so 6 times in 10, of the family that tells most', () => {
    const view = (batchId: string, chance: number) => ({ batch: batchId, shows: [{ chance, weight: 1 }], carries: [] });
    const views = [
      [view('dull', 0.5), view('telling', 0.5)],
      [view('dull', 0.52), view('telling', 0.75)],
    ];
    const found = whatSettles([0.5, 0.5], views)!;
    expect(found.batch).toBe('telling');
    expect(found.seedlings).toBe(20);
    expect(found.chance).toBeGreaterThanOrEqual(0.6);
    expect(whatSettles([0.95, 0.05], views)).toBeNull();
    expect(whatSettles([1], [[view('dull', 0.5)]])).toBeNull();
  });

  it('is said of a programme that cannot tell yet', () => {
    const { settled, settling } = only(withLog([selfed(4, 2)], sure()));
    expect(settled).toBe(false);
    expect(settling).toMatchObject({ batch: 'family' });
    expect(settling!.chance).toBeGreaterThan(0.6);
  });
});

describe('losers worth keeping', () => {
  it('two of three that do not show a trait of two copies carry one (Mendel 1866: 399 of 600 segregated)', () => {
    const learned = only(withLog([selfed(25, 75)], sure([RULES[1]!])));
    expect(learned.losers).toHaveLength(75);
    expect(learned.losers[0]!.carries).toBeCloseTo(2 / 3, 2);
  });

  it('of open pollination, 2q/(1 + q) of those that do not show it, by Hardy (1908) as in Li (1955)', () => {
    const q = 0.3;
    const air: Document['pools'] = [{ id: 'air', name: 'air', background: { trees: 50, weight: 1, kind: 'pear', genes: { r: q } } }];
    const changes: Partial<Document> = {
      ...sure([RULES[1]!]),
      trees: [tree('any', { genes: { r: { frequency: q } } }), tree('hedgerow'), tree('bell')],
      pools: air,
    };
    const learned = only(withLog([batch('open', 2027, { seed: { tree: 'any' }, pollen: 'open', trees: trees(0, 1) })], changes));
    const [, one] = hardyWeinberg(q);
    const two = q * q;
    // A slip of the pen in a thousand, and a fifth of the belief on trees of which any share cannot show it: those with two copies are carriers too.
    const ways = [{ able: 1, weight: 0.8 }, ...Array.from({ length: 20 }, (_, i) => ({ able: (i + 0.5) / 20, weight: 0.01 }))];
    const hidden = (able: number): number => able * 0.001 + (1 - able) * 0.999;
    const carrying = ways.reduce((sum, { able, weight }) => sum + weight * (two * hidden(able) + one * 0.999), 0);
    const all = ways.reduce((sum, { able, weight }) => sum + weight * (two * hidden(able) + (1 - two) * 0.999), 0);
    expect(learned.losers[0]!.carries).toBeCloseTo(carrying / all, 9);
    // Where every tree shows it that can, it is the textbook's value.
    expect(one / (1 - two)).toBeCloseTo(carrierIfNotShown(q), 12);
    expect(carrying / all).toBeGreaterThan(carrierIfNotShown(q));
  });

  it('names trees that stand or were culled, not the dead nor those that showed it', () => {
    const list = [
      judged('a', 2033, 0, 2),
      judged('b', 2033, 1, 2),
      judged('c', 2033, 0, 2, { status: 'culled' }),
      judged('d', 2033, 0, 2, { status: 'dead', statusSince: 2036 }),
    ];
    const { losers } = only(withLog([batch('family', 2027, { seed: { tree: 'hybrid' }, pollen: 'self', trees: list })], sure()));
    expect(losers.map(({ tag }) => tag)).toEqual(['a', 'c']);
  });
});

describe('parents', () => {
  it('a logged tree that became one: of those that show a trait of one copy, one in three has two (Mendel 1866)', () => {
    const programme = withLog([selfed(1, 0), batch('next', 2034, { seed: { tag: 's0' }, pollen: 'self', trees: trees(3, 1) })], sure([RULES[0]!]));
    const trait = programme.traits[0] as ShownTrait;
    const states = new RuleGenes(programme, rulingOf(trait, 0)).statesOf({ tag: 's0' })!;
    const byGametes = (share: number) => states.filter(({ gametes }) => Math.abs(gametes[1]! - share) < 1e-9).reduce((sum, { chance }) => sum + chance, 0);
    expect(byGametes(1)).toBeCloseTo(1 / 3, 12);
    expect(byGametes(0.5)).toBeCloseTo(2 / 3, 12);
  });

  it('of whom nothing is known leave their family out, by name', () => {
    const { leftOut, families } = only(withLog([selfed(3, 1), batch('found', 2027, { seed: { tag: 'nobody' }, pollen: 'self', trees: trees(1, 1) })], sure()));
    expect(leftOut).toMatchObject([{ batch: 'found', why: 'unknownParents' }]);
    expect(families.map(({ batch: id }) => id)).toEqual(['family', 'found']);
  });

  it('stray seedlings explain a few that do not show it where all should', () => {
    const changes = (straySet: number): Partial<Document> => {
      const base = withLog([], sure([RULES[0]!]));
      return {
        ...sure([
          RULES[1]!,
          {
            name: 'both genes twice',
            weight: 1,
            needs: {
              needs: 'all',
              of: [
                { gene: 'r', copies: 2 },
                { gene: 'd', copies: 1 },
              ],
            },
          },
        ]),
        trees: [
          tree('full', { genes: { r: { copies: 2 }, d: { copies: 1 } } }),
          tree('other', { genes: { r: { copies: 2 }, d: { copies: 1 } } }),
          tree('hedgerow'),
          tree('bell'),
        ],
        crosses: base.crosses.filter(({ id }) => id === 'within').map((entry) => ({ ...entry, straySet })),
      };
    };
    const family = batch('family', 2027, { seed: { tree: 'full' }, pollen: { tree: 'other' }, trees: trees(17, 3) });
    const without = only(withLog([family], changes(0)));
    const strays = only(withLog([family], changes(0.04)));
    // Without strays three of twenty speak for the rule that lets a quarter fail; with them hardly.
    const first = ({ rules }: LearnedInheritance): number => rules[0]!.after;
    expect(first(strays)).toBeGreaterThan(first(without));
  });
});
