import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { Generation, Programme } from '../../src/model/programme.ts';
import { ourFigures, programmeOf, type Figure, type Figures } from './figures.ts';

/**
 * The tables that the independent program printed of its own four programmes, entered here letter by letter: not one rule is bent
 * to make the two agree. Its futures are few (1,000 to 4,000 a plan), so this asks less than second-opinion.test.ts, of more figures.
 */
const printed = z
  .record(z.string(), z.record(z.string(), z.record(z.string(), z.record(z.string(), z.string()))))
  .parse(JSON.parse(readFileSync(new URL('./printed.json', import.meta.url), 'utf8')));

const RUNS = 4000;
const ERRORS = 4;

const FILES: Readonly<Record<string, string>> = {
  'red-pear': '../../sims/examples/red-pear.json',
  'quick-peach': './quick-peach.programme.json',
  'slow-walnut': './slow-walnut.programme.json',
  'graded-nectarine': './graded-nectarine.programme.json',
};

type Edit = (programme: Programme) => Programme;
const onGenerations =
  (edit: (generation: Generation) => Generation): Edit =>
  (programme) => ({ ...programme, plans: programme.plans.map((plan) => ({ ...plan, generations: plan.generations.map(edit) })) });
const rescue = (change: Partial<NonNullable<Generation['rescue']>>): Edit =>
  onGenerations((generation) =>
    generation.rescue && generation.rescue.who !== 'none' ? { ...generation, rescue: { ...generation.rescue, ...change } } : generation,
  );
/** The goal asks for other weeks, and so does the last generation, which keeps by the goal. */
const weeks = (atLeast: number): Edit => {
  const asked = (conditions: Programme['goal']['conditions']) =>
    conditions.map((condition) => (condition.type === 'measured' ? { ...condition, atLeast } : condition));
  return (programme) => ({
    ...programme,
    goal: { ...programme.goal, conditions: asked(programme.goal.conditions) },
    plans: programme.plans.map((plan) => ({
      ...plan,
      generations: plan.generations.map((generation, g) =>
        g === plan.generations.length - 1 ? { ...generation, keep: { ...generation.keep, conditions: asked(generation.keep.conditions) } } : generation,
      ),
    })),
  });
};

const VARIANTS: Readonly<Record<string, Edit>> = {
  'as it is': (programme) => programme,
  'graft at 2 months': rescue({ month: 2 }),
  'graft at 4 months': rescue({ month: 4 }),
  'graft at 6 months': rescue({ month: 6 }),
  'graft at 9 months': rescue({ month: 9 }),
  'graft at 12 months': rescue({ month: 12 }),
  'three scions a seedling': rescue({ scions: 3 }),
  'every seedling grafted': rescue({ who: 'every' }),
  'own roots kept when no scion takes': rescue({ keepOwnRoots: true }),
  'keeping at least 9 weeks': weeks(9),
  'keeping at least 11 weeks': weeks(11),
  'guesses as they stand': (programme) => ({ ...programme, guessesAsTheyStand: true }),
  '60 places': (programme) => ({ ...programme, limits: { ...programme.limits, places: 60 } }),
};

const NAMES: Readonly<Record<string, string>> = {
  'planted out': 'planted',
  'to bearing': 'bearing',
  judgings: 'judged',
  'weak saved': 'weakGrafted',
  'no room': 'noRoom',
  'tree-years': 'treeYears',
  'most places': 'mostPlaces',
  'busiest year': 'busiestHours',
  'over hours': 'overHours',
};

/** Our figure under the name of a printed one, in its units: percent or mean, with its standard error. */
function ours(figures: Figures, name: string, startYear: number): { value: number; se: number } {
  const plain = name.replace(' %', '');
  const given = /^proven if (.+): (.+)$/.exec(plain);
  const keys = given
    ? Object.keys(figures).filter((key) => {
        const [, what = '', which = ''] = /^proven if (?:rule|fact) (.+): (.+)$/.exec(key) ?? [];
        return (
          what.toLowerCase() === given[1]?.toLowerCase() &&
          (which.toLowerCase() === given[2]?.toLowerCase() || which === { no: 'false', yes: 'true' }[given[2] ?? ''])
        );
      })
    : [plain.replace(/^proven by (\d+)$/, (_, year: string) => `proven within ${String(Number(year) - startYear)} years`)].map((key) => NAMES[key] ?? key);
  const figure: Figure | undefined = figures[keys[0] ?? ''];
  if (!figure) throw new Error(`We have no figure for “${name}”.`);
  if ('hits' in figure)
    return { value: (100 * figure.hits) / figure.of, se: 100 * Math.sqrt(((figure.hits / figure.of) * (1 - figure.hits / figure.of)) / figure.of) };
  const percent = name.includes('%') ? 100 : 1;
  return { value: percent * figure.mean, se: percent * figure.se };
}

/** What a printed “57.4 ±0.8” allows: half of a last digit in the value and in its error are lost in print. */
function allowed(text: string): { value: number; se: number; rounding: number } {
  const [value = '', error = ''] = text.split(' ±');
  const rounding = 0.5 * 10 ** -(value.split('.')[1]?.length ?? 0);
  return { value: Number(value), se: Number(error) + rounding, rounding };
}

describe('the independent program’s own programmes, letter by letter', () => {
  for (const [name, variants] of Object.entries(printed)) {
    const programme = programmeOf(FILES[name]!);
    // Only the plan whose discards this project’s other test leaves standing differs from what was printed.
    const asPrinted: Programme = { ...programme, plans: programme.plans.map((plan) => ({ ...plan, clearDiscards: true })) };
    for (const [variant, plans] of Object.entries(variants)) {
      const document = VARIANTS[variant]!(asPrinted);
      const deadlines = Array.from({ length: programme.lastYear - programme.startYear + 1 }, (_, years) => years);
      it(`${name}, ${variant}: every printed figure`, () => {
        const positions = Object.keys(plans).map((plan) => planAt(name, plan));
        const all = ourFigures(document, RUNS, deadlines, positions);
        let compared = 0;
        const off = Object.entries(plans).flatMap(([plan, figures], p) => {
          return Object.entries(figures).flatMap(([figure, text]) => {
            compared += 1;
            const theirs = allowed(text);
            const mine = ours(all[p]!, figure, programme.startYear);
            const room = ERRORS * Math.hypot(mine.se, theirs.se) + theirs.rounding;
            return Math.abs(mine.value - theirs.value) <= room ? [] : [`${plan}, ${figure}: ${mine.value.toFixed(2)} ±${mine.se.toFixed(2)} against ${text}`];
          });
        });
        expect(compared).toBeGreaterThan(1);
        expect(off).toEqual([]);
      });
    }
  }
});

/** Plans stand in the order in which they were printed. */
function planAt(name: string, plan: string): number {
  const at = Object.keys(printed[name]?.['as it is'] ?? {}).indexOf(plan);
  if (at < 0) throw new Error(`No plan “${plan}” in ${name}.`);
  return at;
}
