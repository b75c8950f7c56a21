import type { Programme } from '../model/programme.ts';
import type { Diary, DiaryGeneration, DiaryOrigin, DiaryYear } from '../results/diary.ts';
import { readOrigin } from './origin.ts';
import { COUNT, STAGE_COUNT, type Orchard } from './orchard.ts';

/** Writes down one future by looking at what changed each year: the engine itself knows nothing of diaries. */
export class Diarist {
  private readonly years: DiaryYear[] = [];
  private readonly before: Int32Array;
  private readonly livingBefore: number[];
  private readonly gone: boolean[];
  private readonly picksBefore: number[];
  private judgedBefore: number[];
  private provenBefore = 0;

  constructor(
    private readonly orchard: Orchard,
    private readonly programme: Programme,
  ) {
    const { generations } = orchard.plan;
    this.before = new Int32Array(generations.length * STAGE_COUNT);
    this.livingBefore = generations.map(() => 0);
    this.judgedBefore = generations.map(() => 0);
    this.gone = generations.map(() => false);
    this.picksBefore = generations.map(() => 0);
  }

  /** Call when the future begins from what stands: what was done before is nothing that happens in it; a tree proven before is told. */
  begin(): void {
    this.note();
    if (this.provenBefore === 0) this.years.length = 0;
  }

  /** Call at the end of every year. */
  note(): void {
    const { orchard, programme } = this;
    const { year, weather, compiled, plan } = orchard;
    const lost = [
      ...programme.trees.filter((_, t) => weather.treeLost[t] === year).map(({ name }) => name),
      ...programme.gardens.filter((_, g) => year > 0 && weather.gardenLost[g * compiled.years + year] === 1).map(({ name }) => name),
    ];
    const generations = plan.generations.flatMap((_, g) => this.generation(g));
    const proven = orchard.tally.proven - this.provenBefore;
    this.provenBefore = orchard.tally.proven;
    const frost = weather.frost[year] === 1 && generations.some(({ flowers, fruiting, judged }) => flowers + fruiting + judged > 0);
    if (frost || lost.length > 0 || proven > 0 || generations.some(happened))
      this.years.push({ year: compiled.startYear + year, frost, lost, generations, proven });
  }

  private generation(g: number): DiaryGeneration[] {
    const { orchard, before } = this;
    const now = (stage: number) => orchard.stages[g * STAGE_COUNT + stage]!;
    const change = (stage: number) => now(stage) - before[g * STAGE_COUNT + stage]!;
    const { judged, standing } = this.look(g);
    const living = orchard.livingPicks(g);
    const kept = change(COUNT.kept);
    const wentOn = orchard.state(g).goneOn && this.gone[g] === false;
    const entry: DiaryGeneration = {
      generation: g,
      flowers: change(COUNT.flowers),
      fruits: change(COUNT.fruits),
      seedlings: change(COUNT.seedlings),
      grafted: orchard.generation(g).rescue ? change(COUNT.aliveAtGraft) : 0,
      fruiting: change(COUNT.fruiting),
      judged: judged - this.judgedBefore[g]!,
      kept,
      picksLost: Math.max(0, this.livingBefore[g]! + kept - living),
      wentOn,
      standing,
      ...this.origin(g),
    };
    for (let stage = 0; stage < STAGE_COUNT; stage += 1) before[g * STAGE_COUNT + stage] = now(stage);
    this.livingBefore[g] = living;
    this.judgedBefore[g] = judged;
    this.gone[g] = orchard.state(g).goneOn;
    return happened(entry) ? [entry] : [];
  }

  /** Where the genomes of the trees kept this year come from. */
  private origin(g: number): { readonly origin?: DiaryOrigin } {
    const { orchard, programme, picksBefore } = this;
    const { origin } = orchard.compiled;
    const { picks } = orchard.state(g);
    const kept = picks.slice(picksBefore[g]);
    picksBefore[g] = picks.length;
    if (!origin || origin.kinds.length < 2 || kept.length === 0) return {};
    const means = new Float64Array(origin.kinds.length + 1);
    readOrigin(orchard, kept, means);
    const [, second] = origin.kinds.map((kind, k) => ({ kind, share: means[k]! })).sort((a, b) => b.share - a.share);
    if (!second) return {};
    return { origin: { kind: programme.kinds[second.kind]?.name ?? '', share: second.share, around: origin.gene < 0 ? null : means[origin.kinds.length]! } };
  }

  /** Crops judged so far, and trees standing. */
  private look(g: number): { judged: number; standing: number } {
    const { stand, cohorts } = this.orchard;
    let judged = 0;
    let standing = 0;
    for (let i = 0; i < stand.count; i += 1) {
      if (stand.generation[i] !== g) continue;
      judged += stand.judged[i]!;
      standing += stand.alive[i]!;
    }
    for (let c = 0; c < cohorts.count; c += 1) if (cohorts.generation[c] === g) standing += cohorts.left[c]!;
    return { judged, standing };
  }

  finish(run: number): Diary {
    const { orchard, programme } = this;
    const shown = programme.traits.filter((trait) => trait.type === 'shown');
    return {
      run,
      rules: shown.flatMap((trait, t) => (trait.rules.length > 1 ? [{ trait: trait.name, rule: trait.rules[orchard.facts.ruleOf[t]!]?.name ?? '' }] : [])),
      facts: programme.facts.map((fact, f) => ({ fact: fact.name, holds: orchard.facts.holds[f] === 1 })),
      years: this.years,
      proven: orchard.tally.yearProven >= 0,
    };
  }
}

function happened({ flowers, fruits, seedlings, grafted, fruiting, judged, kept, picksLost, wentOn }: DiaryGeneration): boolean {
  return wentOn || flowers + fruits + seedlings + grafted + fruiting + judged + kept + picksLost > 0;
}
