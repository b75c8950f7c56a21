import type { Estimate, Source } from '../model/estimate.ts';
import { sourceOf } from '../model/estimate-forms.ts';
import type { Cross, Kind, Programme, Stock, Trait, Tree } from '../model/programme.ts';

/** What an unknown is about: words, and the cheapest way to learn it, go by this. */
export const UNKNOWN_KINDS = [
  'roots',
  'rule',
  'set',
  'stray',
  'emptyFruit',
  'seeds',
  'germination',
  'weakShare',
  'dying',
  'take',
  'stockLoss',
  'precocity',
  'stockFertility',
  'firstFruit',
  'neverFruits',
  'regularity',
  'losses',
  'frost',
  'frostShare',
  'flowers',
  'fertility',
  'canShow',
  'seasons',
  'falseShow',
  'emptyIfShown',
  'inherited',
  'travels',
  'inbreeding',
  'treeFlowers',
  'treeLoss',
  'treeValue',
  'treeGenes',
  'neighbours',
  'gardenLoss',
  'families',
] as const;
export type UnknownKind = (typeof UNKNOWN_KINDS)[number];

/** Where a number came from; `unsaid`: nobody says. */
export type RestsOn = Source['kind'] | 'unsaid';

/** Facts that are one question for the breeder, drawn together. */
export interface UnknownFact {
  /** Place of the entry it belongs to and what of it, by ids. */
  readonly id: string;
  readonly kind: UnknownKind;
  /** Name of the cross, kind, tree, stock, trait, garden or pool it is about; of a shared yes/no fact its own. */
  readonly name: string;
  /** Id of that entry. */
  readonly of: string;
  /** Name of the trait, for the value of a tree. */
  readonly trait: string;
  /** Places of what is drawn (see engine/fact-mix.ts); none for the last, which is whatever no other fact names. */
  readonly places: readonly string[];
  /** Those of them that are numbers, so that there is more and less of it. */
  readonly numbers: readonly string[];
  /** The least sure source of its numbers. */
  readonly restsOn: RestsOn;
}

interface Part {
  readonly place: string;
  readonly estimate: Estimate | undefined;
}

/** From surest to least sure; an invented number rests on nothing at all. */
const SURENESS: readonly RestsOn[] = ['counted', 'published', 'practice', 'remembered', 'guess', 'unsaid', 'invented'];

function restsOn(parts: readonly Part[]): RestsOn {
  const kinds = parts.flatMap(({ estimate }): RestsOn[] => (estimate === undefined ? [] : [sourceOf(estimate)?.kind ?? 'unsaid']));
  return kinds.reduce<RestsOn>((worst, kind) => (SURENESS.indexOf(kind) > SURENESS.indexOf(worst) ? kind : worst), kinds[0] ?? 'unsaid');
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** Whether “more” of it means one thing: a spread, an inheritance and its shares of luck do not go up or down together. */
const WITHOUT_MORE: ReadonlySet<UnknownKind> = new Set<UnknownKind>(['roots', 'inherited', 'treeGenes', 'neighbours', 'families', 'rule']);

/**
 * Lists what a programme leaves unknown, as the breeder would ask it. What is one question is one entry: the three ages of first fruit of a
 * kind, the take of tender and of ripe wood, a chance and the yes/no fact that it is the chance of. The last entry is what no one can place
 * beforehand: how early each family comes into fruit.
 * @param drawn places of all that is drawn (FactReader.drawn)
 */
export function unknownFacts(programme: Programme, drawn: readonly string[]): readonly UnknownFact[] {
  const isDrawn = new Set(drawn);
  const found: UnknownFact[] = [];
  const add = (kind: UnknownKind, section: string, entry: Named, what: string, parts: readonly Part[], more: Partial<UnknownFact> = {}): void => {
    const here = parts.filter(({ place }) => isDrawn.has(place));
    if (here.length === 0) return;
    found.push({
      id: `${section}/${entry.id}${what && `/${what}`}`,
      kind,
      name: entry.name,
      of: entry.id,
      trait: '',
      places: here.map(({ place }) => place),
      numbers: WITHOUT_MORE.has(kind) ? [] : here.map(({ place }) => place),
      restsOn: restsOn(here),
      ...more,
    });
  };
  /** Parts of one entry; keys are those of the document and of the places alike. */
  const parts = (section: string, { id }: Named, fields: Readonly<Record<string, Estimate | undefined>>): readonly Part[] =>
    Object.entries(fields).map(([key, estimate]) => ({ place: `${section}/${id}/${key}`, estimate }));

  const { frostChance, frostTakes } = programme.weather;
  add('frost', 'weather', { id: 'frost', name: '' }, '', [
    { place: 'weather/frostChance', estimate: frostChance },
    { place: 'weather/frostTakes', estimate: frostTakes },
  ]);
  for (const fact of programme.facts) {
    const chance = { place: `facts/${fact.id}/chance`, estimate: fact.chance };
    add('roots', 'facts', fact, '', [{ place: `facts/${fact.id}`, estimate: fact.chance }, chance]);
  }
  for (const cross of programme.crosses) crossFacts(cross);
  for (const trait of programme.traits) traitFacts(trait);
  for (const kind of programme.kinds) kindFacts(kind);
  for (const stock of programme.stocks) stockFacts(stock);
  for (const tree of programme.trees) treeFacts(tree);
  for (const garden of programme.gardens) add('gardenLoss', 'gardens', garden, 'yearlyLoss', parts('gardens', garden, { yearlyLoss: garden.yearlyLoss }));
  for (const pool of programme.pools) {
    const { background } = pool;
    if (!background) continue;
    const numbers = [
      ...Object.entries(background.genes).map(([gene, estimate]) => ({ place: `pools/${pool.id}/background/genes/${gene}`, estimate })),
      ...Object.entries(background.values).map(([trait, estimate]) => ({ place: `pools/${pool.id}/background/values/${trait}`, estimate })),
    ];
    add('neighbours', 'pools', pool, 'background', [{ place: `pools/${pool.id}/background`, estimate: undefined }, ...numbers]);
  }
  found.push({ id: 'families', kind: 'families', name: '', of: '', trait: '', places: [], numbers: [], restsOn: 'unsaid' });
  return found;

  function crossFacts(cross: Cross): void {
    const of = (fields: Readonly<Record<string, Estimate | undefined>>) => parts('crosses', cross, fields);
    const { set, straySet, emptyFruit, seedsPerFruit, germination, weakness } = cross;
    add('set', 'crosses', cross, 'set', of({ set }));
    add('stray', 'crosses', cross, 'straySet', of({ straySet }));
    add('emptyFruit', 'crosses', cross, 'emptyFruit', of({ emptyFruit }));
    add('seeds', 'crosses', cross, 'seeds', of({ seedsPerFruit }));
    add('germination', 'crosses', cross, 'germination', of({ germination }));
    for (const route of cross.routes)
      add('germination', 'crosses', cross, `routes/${route.id}`, of({ [`routes/${route.id}/germination`]: route.germination }), {
        name: `${cross.name}, ${route.name}`,
      });
    if (!weakness) return;
    const { share, onset, course, rootBorne } = weakness;
    const dying = 'halfLife' in course ? { 'weakness/halfLife': course.halfLife } : { 'weakness/alive': course.alive };
    add('weakShare', 'crosses', cross, 'weakness/share', of({ 'weakness/share': share }));
    add('dying', 'crosses', cross, 'weakness/course', of({ 'weakness/onset': onset, ...dying }));
    if ('chance' in rootBorne) add('roots', 'crosses', cross, 'rootBorne', of({ rootBorne: rootBorne.chance, 'weakness/rootBorne': rootBorne.chance }));
  }

  function traitFacts(trait: Trait): void {
    const of = (fields: Readonly<Record<string, Estimate | undefined>>) => parts('traits', trait, fields);
    if (trait.type === 'measured') {
      const { sd, heritability, repeatability, yearShare, travels, inbreeding } = trait;
      add('inherited', 'traits', trait, 'inherited', of({ sd, heritability, repeatability, yearShare }));
      add('travels', 'traits', trait, 'travels', of({ travels }));
      add('inbreeding', 'traits', trait, 'inbreeding', of({ inbreeding }));
      return;
    }
    const { canShow, seasonsShown, falseShow, emptyIfShown } = trait;
    // Weights of rules have no source of their own: they are what the breeder believes.
    add('rule', 'traits', trait, 'rules', of({ rules: undefined }), { restsOn: 'guess' });
    add('canShow', 'traits', trait, 'canShow', of({ canShow }));
    add('seasons', 'traits', trait, 'seasonsShown', of({ seasonsShown }));
    add('falseShow', 'traits', trait, 'falseShow', of({ falseShow }));
    add('emptyIfShown', 'traits', trait, 'emptyIfShown', of({ emptyIfShown }));
  }

  function kindFacts(kind: Kind): void {
    const of = (fields: Readonly<Record<string, Estimate | undefined>>) => parts('kinds', kind, fields);
    const { firstFruit, neverFruits, regularity, firstYearLoss, yearlyLoss, frostShare, flowers, seedsPerFruit } = kind;
    if (!('between' in firstFruit)) {
      const ages = Object.entries(firstFruit).map(([key, estimate]) => [`firstFruit/${key}`, estimate] as const);
      add('firstFruit', 'kinds', kind, 'firstFruit', of(Object.fromEntries(ages)));
    }
    add('neverFruits', 'kinds', kind, 'neverFruits', of({ neverFruits }));
    add('regularity', 'kinds', kind, 'regularity', of({ regularity }));
    add('losses', 'kinds', kind, 'losses', of({ firstYearLoss, yearlyLoss }));
    add('frostShare', 'kinds', kind, 'frostShare', of({ frostShare }));
    add('flowers', 'kinds', kind, 'flowers', of({ flowers }));
    const { fertilityAsSeedParent, fertilityAsPollenParent } = kind;
    add('fertility', 'kinds', kind, 'fertility', of({ fertilityAsSeedParent, fertilityAsPollenParent }));
    add('seeds', 'kinds', kind, 'seeds', of({ seedsPerFruit }));
  }

  function stockFacts(stock: Stock): void {
    const of = (fields: Readonly<Record<string, Estimate | undefined>>) => parts('stocks', stock, fields);
    const { takeTender, takeRipe, yearlyLoss, precocity, fertility } = stock;
    add('take', 'stocks', stock, 'take', of({ takeTender, takeRipe }));
    add('stockLoss', 'stocks', stock, 'yearlyLoss', of({ yearlyLoss }));
    add('precocity', 'stocks', stock, 'precocity', of({ precocity }));
    add('stockFertility', 'stocks', stock, 'fertility', of({ fertility }));
  }

  function treeFacts(tree: Tree): void {
    const { flowers, yearlyLoss, values, genes } = tree;
    add('treeFlowers', 'trees', tree, 'flowers', parts('trees', tree, { flowers }));
    add('treeLoss', 'trees', tree, 'yearlyLoss', parts('trees', tree, { yearlyLoss }));
    for (const [trait, value] of Object.entries(values)) {
      const name = programme.traits.find(({ id }) => id === trait)?.name ?? '';
      add('treeValue', 'trees', tree, `values/${trait}`, parts('trees', tree, { [`values/${trait}`]: value }), { trait: name });
    }
    const frequencies = Object.entries(genes).flatMap(([gene, state]) => ('frequency' in state ? [[`genes/${gene}`, state.frequency] as const] : []));
    const drawnAs: Part = { place: `trees/${tree.id}`, estimate: undefined };
    add('treeGenes', 'trees', tree, '', [drawnAs, ...parts('trees', tree, Object.fromEntries(frequencies))]);
  }
}
