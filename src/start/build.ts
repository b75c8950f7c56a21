import { kindOf } from '../catalogue/catalogue.ts';
import { PLAIN_TREE } from '../model/plain.ts';
import { FORMAT, programmeSchema, VERSION, type Programme } from '../model/programme.ts';
import { freshId } from '../model/plans.ts';
import { parseProgramme, type Reading } from '../model/read.ts';
import type { Answers, Partner } from './answers.ts';
import { biologyOf } from './crosses.ts';
import { range, single } from './guesses.ts';
import { frequencies, inheritanceOf, rareInAir, seenOn, traitOf, type Inheritance } from './inheritance.ts';
import { measuredOf, shrunk } from './measured.ts';
import { plansFor } from './plans.ts';
import { FLOWERS_AN_HOUR } from './sizes.ts';

const RUNS = 4000;
/** Hours of work, a guess of an ordinary pace: two minutes a flower, half an hour to raise a seedling, a quarter for a graft or a tasting. */
const HOURS = { perFlower: 0.03, perFruit: 0.02, perSeedling: 0.5, perGraft: 0.25, perPlaceYear: 1, perJudging: 0.25 };
/** How much of the pollen in the air is a named tree's, against all unknown neighbours together. */
const NAMED_WEIGHT = 0.15;
/** A tree that takes its own pollen stands nearest to itself. */
const OWN_WEIGHT = 1;

const groundSchema = programmeSchema.omit({ plans: true });
type Ground = Omit<Programme, 'plans'>;
type Tree = Programme['trees'][number];

const loss = () => range(0.01, 0.02, 0.05, 'An old tree of good health; nobody counted this one’s chances.');

function treesOf(answers: Answers, inheritance: Inheritance, traitId: string): Tree[] {
  const { tree, partners, goal } = answers;
  const measured = measuredOf(answers);
  const ids: string[] = [];
  const standing = (
    name: string,
    kind: string,
  ): Pick<Tree, 'id' | 'name' | 'kind' | 'flowers' | 'gardens' | 'yearlyLoss' | 'genes' | 'sex' | 'testCrosses'> => {
    const id = freshId(name, ids);
    ids.push(id);
    return {
      id,
      name,
      kind,
      flowers: kindOf(kind)?.tree.flowers ?? single(100, 'Not counted.'),
      gardens: [],
      yearlyLoss: loss(),
      genes: frequencies(inheritance.genes, kind === tree.kind),
      ...PLAIN_TREE,
    };
  };
  const mine: Tree = {
    ...standing(tree.name, tree.kind),
    copies: tree.standing,
    values: measured && goal.own !== undefined ? { [measured.id]: shrunk(goal.own, goal.ordinary, tree.seasons) } : {},
    seen: { [traitId]: { source: true } },
  };
  const others = partners.map((partner: Partner): Tree => {
    const other = standing(partner.name, partner.kind);
    // What it shows it must be able to carry, whatever its kind.
    const genes = partner.shows === 'yes' ? frequencies(inheritance.genes, true) : other.genes;
    return { ...other, copies: 1, values: {}, genes, seen: seenOn(partner, traitId) };
  });
  return [mine, ...others];
}

function poolOf({ tree, way }: Answers, trees: readonly Tree[], { genes }: Inheritance): Programme['pools'][number] {
  const [mine, ...others] = trees;
  const ownPollen = kindOf(tree.kind)?.kind.selfCompatible === true;
  const named = others.filter(({ kind }) => kind === tree.kind).map(({ id }) => ({ tree: id, weight: NAMED_WEIGHT }));
  return {
    id: 'neighbours',
    name: `around ${tree.name}`,
    trees: [...(ownPollen && mine ? [{ tree: mine.id, weight: OWN_WEIGHT }] : []), ...named],
    background: { trees: way.neighbours, weight: 1, kind: tree.kind, genes: rareInAir(genes), values: {}, spread: {} },
    note: 'Who fathers open seed was not counted: the weights are guesses.',
  };
}

function goalOf({ goal }: Answers, traitId: string): Programme['goal'] {
  return {
    conditions: [
      { type: 'shown', trait: traitId, grade: 'any', atLeast: goal.shows },
      ...(goal.measure === 'none' ? [] : [{ type: 'measured' as const, trait: goal.measure, atLeast: goal.least }]),
    ],
    crops: goal.crops,
    trees: goal.trees,
    breedsTrue: false,
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function groundOf(answers: Answers): Ground {
  const { tree, means } = answers;
  const inheritance = inheritanceOf(answers);
  const measured = measuredOf(answers);
  const traitId = freshId(tree.trait, measured ? [measured.id] : []);
  const { kinds, crosses, stocks } = biologyOf(answers);
  const trees = treesOf(answers, inheritance, traitId);
  return groundSchema.parse({
    format: FORMAT,
    version: VERSION,
    title: `${capital(tree.trait)} from ${tree.name}`,
    note: 'A first programme from five answers. Beside each number stands what it rests on; what says “guess” is worth a count.',
    startYear: means.firstSpring,
    lastYear: means.lastYear,
    shuffleWord: traitId,
    runs: RUNS,
    goal: goalOf(answers, traitId),
    limits: {
      places: means.places,
      hoursPerYear: means.hours,
      bloomDays: means.bloomDays,
      hoursADay: means.hoursADay,
      flowersAnHour: FLOWERS_AN_HOUR,
    },
    hours: HOURS,
    weather: {
      frostChance: range(0.05, 0.15, 0.35, 'A frost in bloom about one spring in seven: look in your own notes.'),
      frostTakes: range(0.4, 0.8, 1, 'A frost in full bloom takes most of the flowers.'),
    },
    genes: inheritance.genes,
    traits: [traitOf(answers, inheritance, traitId), ...(measured ? [measured] : [])],
    kinds,
    trees,
    pools: [poolOf(answers, trees, inheritance)],
    defaultPool: 'neighbours',
    crosses,
    stocks,
  });
}

/**
 * Builds a first programme from the answers: catalogue figures for the kinds, the breeder's own counts in their place, marked guesses for
 * what nobody said, and three plans.
 * @param answers filled in, and without troubles in any question
 * @returns the checked programme, or problems in words where the model itself refuses it
 * @throws RangeError for a kind that the catalogue has not
 */
export function buildProgramme(answers: Answers): Reading {
  const ground = groundOf(answers);
  return parseProgramme({ ...ground, plans: plansFor(answers, ground) });
}
