import { describe, expect, it } from 'vitest';
import { atLeast, binomialPmf } from '../../../src/statistics/binomial.ts';
import { PlanCheck, planCheckIds } from './plan-checks.ts';
import { chanceOneKept } from './season-luck.ts';

/** The derivation of every figure, worked out: what the simulations are held against is itself checked. */
const derivations: Readonly<Record<string, (check: PlanCheck) => Readonly<Record<string, number>>>> = {
  PC1: (check) => ({ chance: 1 - (1 - check.setup('share')) ** check.setup('seedlings'), year: 2 * (1 + check.setup('firstFruit')) }),
  PC2: (check) => ({ chance: atLeast(check.setup('wanted'), check.setup('seedlings'), check.setup('share')) }),
  'PC3-11': seen,
  'PC3-21': seen,
  'PC3-32': seen,
  'PC3s-11': seenInCommonSeasons,
  'PC3s-32': seenInCommonSeasons,
  PC4: (check) => ({ shareShowing: check.setup('frequency'), chance: 1 - (1 - check.setup('frequency')) ** check.setup('seedlings') }),
  PC4b: (check) => {
    const copies = 2 * check.setup('neighbours');
    const missed = Array.from(
      { length: copies + 1 },
      (_, x) => binomialPmf(x, copies, check.setup('frequency')) * (1 - x / copies) ** check.setup('seedlings'),
    );
    return { chance: 1 - missed.reduce((sum, p) => sum + p, 0) };
  },
  PC5: (check) => ({ alive: (1 - check.setup('firstYearLoss')) * (1 - check.setup('yearlyLoss')) ** (check.setup('firstFruit') - 1) }),
  PC7: (check) => {
    const alive = (months: number) => 2 ** (-(months - check.setup('onset')) / check.setup('halfLife'));
    const grafted = check.setup('take') * (1 - check.setup('stockLoss')) ** check.setup('firstFruit');
    const atFruit = 12 * check.setup('firstFruit');
    return {
      aliveAtGraft: alive(check.setup('month')),
      rootBorne: alive(check.setup('month')) * grafted,
      topBorne: alive(atFruit) * grafted,
      notGrafted: alive(atFruit),
    };
  },
  PC8: (check) => ({ alive: (1 - check.setup('yearlyLoss')) ** check.setup('winters') }),
  PC9: (check) => ({ bothLost: check.setup('frost') ** check.setup('springs') }),
};

function seen(check: PlanCheck): Readonly<Record<string, number>> {
  const [n, k] = [check.setup('judged'), check.setup('needed')];
  const able = check.setup('share') * check.setup('canShow');
  const right = able * atLeast(k, n, check.setup('seasonsShown'));
  const keptShare = right + (1 - able) * atLeast(k, n, check.setup('falseShow'));
  return { keptShare, trueAmongKept: right / keptShare, chanceOneKept: 1 - (1 - keptShare) ** check.setup('seedlings'), year: 11 + n };
}

function seenInCommonSeasons(check: PlanCheck): Readonly<Record<string, number>> {
  const of = (key: string) => check.setup(key);
  const judging = {
    share: of('share'),
    canShow: of('canShow'),
    seasonsShown: of('seasonsShown'),
    falseShow: of('falseShow'),
    sharedSeason: of('sharedSeason'),
    judged: of('judged'),
    needed: of('needed'),
  };
  return { chanceOneKept: chanceOneKept(judging, of('seedlings')) };
}

describe('exact answers of whole plans', () => {
  for (const id of planCheckIds) {
    const check = new PlanCheck(id);
    it(check.name, () => {
      const derived = derivations[id]?.(check) ?? {};
      expect(Object.keys(derived).length).toBeGreaterThan(0);
      for (const [key, value] of Object.entries(derived)) {
        const allowed = Math.max(check.goodTo, 1e-12);
        expect(Math.abs(value - check.expected(key)), `${key}: ${String(value)}`).toBeLessThanOrEqual(allowed);
      }
    });
  }
});
