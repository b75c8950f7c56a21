import type { Estimate } from '../model/estimate.ts';
import type { Condition, Cross, FirstFruit, Kind, Pool, Programme, Rule, Stock, Trait, Tree } from '../model/programme.ts';
import { setsOf } from '../model/sets.ts';
import { textKey } from '../random/mix.ts';
import {
  UNITS_PER_PLACE,
  type Compiled,
  type CompiledBackground,
  type CompiledCross,
  type CompiledFact,
  type CompiledKind,
  type CompiledMeasured,
  type CompiledPlan,
  type CompiledPool,
  type CompiledShown,
  type CompiledStock,
  type CompiledTree,
  type Work,
} from './compiled.ts';
import type { CompiledRule } from './compiled-genome.ts';
import { compileGenes, compileGenome, sortGenes } from './compile-genome.ts';
import { compileCondition, compileGenerations } from './compile-plans.ts';
import { EstimateTable } from './estimates.ts';
import { compileAlleles } from './incompatibility.ts';
import { at, type Ids } from './positions.ts';
import type { compileToday } from './today.ts';
import { compileWhatIf, NOTHING, withTestsFrom, type WhatIf } from './what-if.ts';

const units = (places: number) => Math.round(places * UNITS_PER_PLACE);
const indexBy = (list: readonly { readonly id: string }[]) => new Map(list.map((entry, i) => [entry.id, i]));
const NO_WORK: Work = { perFlower: 0, perFruit: 0, perSeedling: 0, perGraft: 0, perTest: 0, perLook: 0, perPlaceYear: 0, perJudging: 0 };

/** Collects estimates and hands out their slots. */
class Slots {
  readonly entries: { place: string; estimate: Estimate; rho: number }[] = [];
  add(place: string, estimate: Estimate | undefined, rho = 0): number {
    if (estimate === undefined) return -1;
    this.entries.push({ place, estimate, rho });
    return this.entries.length - 1;
  }
}

/**
 * Compiles a checked programme (see model/check.ts) to flat form. Pure; throws nothing for programmes without stopping problems.
 * @param standing how what stands is brought in; left out where nothing runs, so that names and limits can be had without it
 * @throws RangeError for a what-if that names what the programme does not have
 */
export function compile(programme: Programme, whatIf: WhatIf = NOTHING, standing: typeof compileToday = () => null): Compiled {
  const slots = new Slots();
  const { weather, limits } = programme;
  const sortedGenes = sortGenes(programme);
  const ids = {
    genes: indexBy(sortedGenes),
    shown: indexBy(programme.traits.filter((trait) => trait.type === 'shown')),
    measured: indexBy(programme.traits.filter((trait) => trait.type === 'measured')),
    kinds: indexBy(programme.kinds),
    trees: indexBy(programme.trees),
    pools: indexBy(programme.pools),
    crosses: indexBy(programme.crosses),
    stocks: indexBy(programme.stocks),
    gardens: indexBy(programme.gardens),
    facts: indexBy(programme.facts),
  };
  const facts: CompiledFact[] = programme.facts.map((fact) => ({
    id: fact.id,
    key: textKey(`fact/${fact.id}`),
    chanceAt: slots.add(`facts/${fact.id}/chance`, fact.chance),
  }));
  const kinds = programme.kinds.map((kind) => compileKind(kind, slots, ids.kinds));
  const crosses = programme.crosses.map((cross) => compileCross(cross, programme, slots, ids, facts));
  const crossOf = new Int32Array(kinds.length ** 2).fill(-1);
  programme.crosses.forEach((cross, i) => {
    const pair = at(ids.kinds, cross.seed) * kinds.length + at(ids.kinds, cross.pollen);
    if (crossOf[pair] === -1) crossOf[pair] = i;
  });
  const traits = compileTraits(programme, slots, ids.genes);
  const alleles = compileAlleles(programme, 1 + traits.measured.length);
  const trees = programme.trees.map((tree) =>
    compileTree(
      tree,
      programme,
      slots,
      ids,
      sortedGenes.map((gene) => gene.id),
      alleles.of(tree, kinds[at(ids.kinds, tree.kind)]?.sets ?? 2),
    ),
  );
  let handle = trees.length;
  const pools = programme.pools.map((pool) => {
    const compiled = compilePool(
      pool,
      programme,
      slots,
      ids,
      sortedGenes.map((gene) => gene.id),
      handle,
    );
    handle += compiled.background?.trees ?? 0;
    return compiled;
  });
  const condition = (source: Condition) => compileCondition(source, ids);
  const goal = {
    conditions: programme.goal.conditions.map(condition),
    crops: programme.goal.crops,
    trees: programme.goal.trees,
    breedsTrue: programme.goal.breedsTrue,
  };
  const plans = programme.plans.map((plan): CompiledPlan => ({
    id: plan.id,
    clearDiscards: plan.clearDiscards,
    generations: compileGenerations(plan.generations, programme, ids, goal.conditions),
  }));
  const shared = {
    startYear: programme.startYear,
    years: programme.lastYear - programme.startYear + 1,
    placeUnits: Math.floor(limits.places * UNITS_PER_PLACE),
    handFlowers: Math.floor(limits.bloomDays * limits.hoursADay * limits.flowersAnHour),
    hoursLimit: limits.hoursPerYear ?? Infinity,
    moneyLimit: limits.moneyPerYear ?? Infinity,
    hours: programme.hours,
    money: programme.money ?? NO_WORK,
    frostChanceAt: slots.add('weather/frostChance', weather.frostChance),
    frostTakesAt: slots.add('weather/frostTakes', weather.frostTakes),
    luckSet: weather.springLuckSet,
    luckGermination: weather.springLuckGermination,
    facts,
    genes: compileGenes(sortedGenes),
    ...traits,
    kinds,
    crosses,
    crossOf,
    stocks: programme.stocks.map((stock) => compileStock(stock, slots)),
    gardens: programme.gardens.map((garden) => ({
      key: textKey(`garden/${garden.id}`),
      lossAt: slots.add(`gardens/${garden.id}/yearlyLoss`, garden.yearlyLoss),
    })),
    trees,
    incompatibility: alleles.incompatibility,
    pools,
    goal,
    plans: withTestsFrom(plans, whatIf, programme.startYear),
    ...compileGenome(programme, sortedGenes, traits.measured.length, alleles.incompatibility),
    whatIf: compileWhatIf(whatIf, programme, plans),
    today: standing(programme, ids),
  };
  return { ...shared, estimates: new EstimateTable(slots.entries, programme.guessesAsTheyStand) };
}

function compileKind(kind: Kind, slots: Slots, kinds: ReadonlyMap<string, number>): CompiledKind {
  const place = `kinds/${kind.id}`;
  const slot = (key: string, estimate: Estimate) => slots.add(`${place}/${key}`, estimate);
  const fruit: FirstFruit = kind.firstFruit;
  const three = 'earliest' in fruit;
  const between = 'between' in fruit;
  return {
    key: textKey(place),
    firstFruitForm: between ? 2 : three ? 1 : 0,
    earliestAt: three ? slot('firstFruit/earliest', fruit.earliest) : 'years' in fruit ? slot('firstFruit/years', fruit.years) : -1,
    halfAt: three ? slot('firstFruit/half', fruit.half) : -1,
    ninetyAt: three ? slot('firstFruit/ninety', fruit.ninety) : -1,
    betweenSeed: between ? at(kinds, fruit.between.seed) : -1,
    betweenPollen: between ? at(kinds, fruit.between.pollen) : -1,
    familySpreadAt: slot('familySpread', kind.familySpread),
    neverFruitsAt: slot('neverFruits', kind.neverFruits),
    regularityAt: slot('regularity', kind.regularity),
    firstYearLossAt: slot('firstYearLoss', kind.firstYearLoss),
    yearlyLossAt: slot('yearlyLoss', kind.yearlyLoss),
    frostShareAt: slot('frostShare', kind.frostShare),
    flowersAt: slot('flowers', kind.flowers),
    yearsToFullBloom: kind.yearsToFullBloom,
    fertilitySeedAt: slot('fertilityAsSeedParent', kind.fertilityAsSeedParent),
    fertilityPollenAt: slot('fertilityAsPollenParent', kind.fertilityAsPollenParent),
    selfCompatible: kind.selfCompatible,
    sets: setsOf(kind),
    gametophytic: kind.pollenRejection === 'gametophytic',
    odd: kind.ploidy % 2 === 1,
    maleShareAt: kind.maleShare === 0 ? -1 : slot('maleShare', kind.maleShare),
    nurseryUnits: units(kind.nurseryShare),
    plantOutAge: kind.plantOutAge,
    waitYears: kind.waitYears,
  };
}

function compileCross(cross: Cross, programme: Programme, slots: Slots, ids: Ids, facts: CompiledFact[]): CompiledCross {
  const place = `crosses/${cross.id}`;
  const slot = (key: string, estimate: Estimate | undefined, rho = 0) => slots.add(`${place}/${key}`, estimate, rho);
  const seedKind = programme.kinds[at(ids.kinds, cross.seed)];
  const { springLuckSet, springLuckGermination } = programme.weather;
  const { weakness } = cross;
  let rootFact = -1;
  if (weakness) {
    if ('fact' in weakness.rootBorne) rootFact = at(ids.facts, weakness.rootBorne.fact);
    else {
      rootFact = facts.length;
      facts.push({ id: '', key: textKey(`${place}/rootBorne`), chanceAt: slot('weakness/rootBorne', weakness.rootBorne.chance) });
    }
  }
  const course = weakness?.course;
  return {
    key: textKey(place),
    gives: at(ids.kinds, cross.gives),
    setAt: slot('set', cross.set, springLuckSet),
    strayAt: slot('straySet', cross.straySet),
    emptyAt: slot('emptyFruit', cross.emptyFruit),
    // Taken from the kind, it is the kind's own draw: the same in every entry that takes it.
    seedsAt:
      cross.seedsPerFruit === undefined
        ? slots.add(`kinds/${cross.seed}/seedsPerFruit`, seedKind?.seedsPerFruit ?? 1)
        : slot('seedsPerFruit', cross.seedsPerFruit),
    seedsAtMost: cross.seedsAtMost ?? seedKind?.seedsAtMost ?? 1,
    germinationAt: slot('germination', cross.germination, springLuckGermination),
    routes: cross.routes.map((route) => ({
      id: route.id,
      germinationAt: slot(`routes/${route.id}/germination`, route.germination, springLuckGermination),
      hoursPerSeed: route.hoursPerSeed,
      moneyPerSeed: route.moneyPerSeed,
    })),
    dormancy: cross.dormancy,
    weakShareAt: slot('weakness/share', weakness?.share),
    onsetAt: slot('weakness/onset', weakness?.onset),
    halfLifeAt: course && 'halfLife' in course ? slot('weakness/halfLife', course.halfLife) : -1,
    aliveAt: course && 'alive' in course ? slot('weakness/alive', course.alive) : -1,
    aliveYears: course && 'alive' in course ? course.atYears : 0,
    rootFact,
    usableAt: slot('usableSeedlings', cross.usableSeedlings),
    clonesAt: cross.motherClones === 0 ? -1 : slot('motherClones', cross.motherClones),
    necrosisShareAt: slot('necrosis/share', cross.necrosis?.share),
    necrosisMonthsAt: slot('necrosis/months', cross.necrosis?.months),
  };
}

function compileStock(stock: Stock, slots: Slots): CompiledStock {
  const slot = (key: string, estimate: Estimate) => slots.add(`stocks/${stock.id}/${key}`, estimate);
  return {
    lossAt: slot('yearlyLoss', stock.yearlyLoss),
    placeUnits: units(stock.place),
    precocityAt: slot('precocity', stock.precocity),
    takeTenderAt: slot('takeTender', stock.takeTender),
    takeRipeAt: slot('takeRipe', stock.takeRipe),
    ripeMonths: stock.ripeMonths,
    fertilityAt: slot('fertility', stock.fertility),
  };
}

function compileRule(rule: Rule, genes: ReadonlyMap<string, number>): CompiledRule {
  const { needs } = rule;
  const base = { name: rule.name, weight: rule.weight };
  if (needs.needs === 'total') return { ...base, mode: 2, genes: needs.genes.map((gene) => at(genes, gene)), copies: [], total: needs.copies };
  return {
    ...base,
    mode: needs.needs === 'all' ? 0 : 1,
    genes: needs.of.map(({ gene }) => at(genes, gene)),
    copies: needs.of.map(({ copies }) => copies),
    total: 0,
  };
}

function compileTraits(programme: Programme, slots: Slots, genes: ReadonlyMap<string, number>): { shown: CompiledShown[]; measured: CompiledMeasured[] } {
  const shown: CompiledShown[] = [];
  const measured: CompiledMeasured[] = [];
  for (const trait of programme.traits as readonly Trait[]) {
    const place = `traits/${trait.id}`;
    const slot = (key: string, estimate: Estimate) => slots.add(`${place}/${key}`, estimate);
    if (trait.type === 'shown')
      shown.push({
        id: trait.id,
        key: textKey(place),
        rules: trait.rules.map((rule) => compileRule(rule, genes)),
        canShowAt: slot('canShow', trait.canShow),
        seasonsAt: slot('seasonsShown', trait.seasonsShown),
        falseShowAt: slot('falseShow', trait.falseShow),
        sharedSeason: trait.sharedSeason,
        graded: trait.grade !== undefined,
        gradeMean: trait.grade?.mean ?? 1,
        gradeSd: trait.grade?.sd ?? 0,
        fruitsCut: trait.grade?.fruitsCut ?? 1,
        emptyIfShownAt: slot('emptyIfShown', trait.emptyIfShown),
      });
    else
      measured.push({
        id: trait.id,
        key: textKey(place),
        unit: trait.unit,
        mean: trait.mean,
        sdAt: slot('sd', trait.sd),
        heritabilityAt: slot('heritability', trait.heritability),
        repeatabilityAt: slot('repeatability', trait.repeatability),
        travelsAt: slot('travels', trait.travels),
        yearShareAt: slot('yearShare', trait.yearShare),
        inbreedingAt: slot('inbreeding', trait.inbreeding),
        genes: trait.genes.map(({ gene, half, dominance }) => ({ gene: at(genes, gene), half, dominance })),
      });
  }
  return { shown, measured };
}

function compileTree(tree: Tree, programme: Programme, slots: Slots, ids: Ids, geneIds: readonly string[], s: readonly number[]): CompiledTree {
  const place = `trees/${tree.id}`;
  const states = geneIds.map((gene) => tree.genes[gene] ?? { copies: 0 });
  const homes = tree.gardens.length > 0 ? tree.gardens.map((garden) => at(ids.gardens, garden)) : programme.gardens.length > 0 ? [0] : [];
  return {
    key: textKey(place),
    kind: at(ids.kinds, tree.kind),
    flowersAt: slots.add(`${place}/flowers`, tree.flowers),
    copies: tree.copies,
    gardens: homes,
    lossAt: slots.add(`${place}/yearlyLoss`, tree.yearlyLoss),
    bearsFrom: tree.bearsFrom === undefined ? 0 : Math.max(0, tree.bearsFrom - programme.startYear),
    copiesOf: states.map((state) => ('copies' in state ? state.copies : -1)),
    frequencyAt: states.map((state, i) => ('frequency' in state ? slots.add(`${place}/genes/${geneIds[i] ?? ''}`, state.frequency) : -1)),
    homologueOf: states.map((state) => ('copies' in state && state.homologue !== undefined ? (state.homologue === 'a' ? 0 : 1) : -1)),
    valueAt: [...ids.measured.keys()].map((trait) => slots.add(`${place}/values/${trait}`, tree.values[trait])),
    sex: tree.sex === 'both' ? 0 : tree.sex === 'male' ? 1 : 2,
    s,
    testCrosses: Object.entries(tree.testCrosses).map(([trait, { showed, of }]) => ({ trait: at(ids.shown, trait), showed, of })),
    seen: Object.entries(tree.seen).map(([trait, seen]) => ({
      trait: at(ids.shown, trait),
      source: 'source' in seen,
      showed: 'showed' in seen ? seen.showed : 0,
      seasons: 'seasons' in seen ? seen.seasons : 0,
    })),
  };
}

function compilePool(pool: Pool, programme: Programme, slots: Slots, ids: Ids, geneIds: readonly string[], firstHandle: number): CompiledPool {
  const place = `pools/${pool.id}/background`;
  const { background } = pool;
  const compiled: CompiledBackground | null = background
    ? {
        key: textKey(place),
        trees: background.trees,
        weight: background.weight,
        kind: at(ids.kinds, background.kind),
        firstHandle,
        frequencyAt: geneIds.map((gene) => slots.add(`${place}/genes/${gene}`, background.genes[gene])),
        valueAt: programme.traits.filter((trait) => trait.type === 'measured').map(({ id }) => slots.add(`${place}/values/${id}`, background.values[id])),
        spread: programme.traits.filter((trait) => trait.type === 'measured').map(({ id }) => background.spread[id] ?? -1),
      }
    : null;
  return { trees: pool.trees.map(({ tree, weight }) => ({ tree: at(ids.trees, tree), weight })), background: compiled };
}
