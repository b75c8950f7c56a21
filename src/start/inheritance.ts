import { PLAIN_GENE } from '../model/plain.ts';
import type { Rule, Programme, ShownTrait, Tree } from '../model/programme.ts';
import { kindOf, type CatalogueTrait } from '../catalogue/catalogue.ts';
import { inheritanceNote } from '../catalogue/said.ts';
import { setsOf } from '../model/sets.ts';
import type { Answers, Partner } from './answers.ts';
import { counted, range } from './guesses.ts';
import { rulesFor } from './sets.ts';

type Genes = Programme['genes'];

/** What stands in the programme for the rare trait: its genes, and the rules by which they show. */
export interface Inheritance {
  readonly genes: Genes;
  readonly rules: readonly Rule[];
  readonly note: string;
  readonly canShow?: ShownTrait['canShow'] | undefined;
}

const GENE = 'wanted';
const SECOND = 'second';
const needs = (...genes: readonly (readonly [gene: string, copies: number])[]): Rule['needs'] => ({
  needs: 'all',
  of: genes.map(([gene, copies]) => ({ gene, copies })),
});

/**
 * Where nobody knows: three explanations, the simplest weighted most. The weights are a guess; that few rare traits of fruit trees were
 * found to need more than two genes is from memory.
 */
const EXPLANATIONS: readonly Rule[] = [
  { name: 'one copy is enough', weight: 5, needs: needs([GENE, 1]) },
  { name: 'two copies needed', weight: 3, needs: needs([GENE, 2]) },
  { name: 'two genes, one copy of each', weight: 2, needs: needs([GENE, 1], [SECOND, 1]) },
];
const [ONE, TWO] = EXPLANATIONS;

const KNOWN = 'known:';
/** Traits of the tree's kind whose inheritance the catalogue knows, with the words that choose them. */
export function knownRules(kind: string): readonly { readonly id: string; readonly trait: CatalogueTrait }[] {
  return (kindOf(kind)?.traits ?? []).flatMap((trait) => (trait.trait.type === 'shown' ? [{ id: `${KNOWN}${trait.id}`, trait }] : []));
}

/** Whether a rule can be chosen for a tree of that kind: one of the plain ones, or one known in the kind. */
export const isRuleFor = (kind: string, rule: string): boolean => !rule.startsWith(KNOWN) || knownRules(kind).some(({ id }) => id === rule);

/** Copies of a gene that a tree of the answers can carry; with another kind in play the sets are taken two by two. */
function setsIn({ tree, partners }: Answers): number {
  const entry = kindOf(tree.kind);
  return entry && partners.every(({ kind }) => kind === tree.kind) ? setsOf(entry.kind) : 2;
}

/** “Two copies” means every copy: with more than two sets that is as many as there are. */
const every = (rule: Rule, sets: number): Rule =>
  sets > 2 && rule.needs.needs === 'all' && rule.needs.of.every(({ copies }) => copies === 2)
    ? { ...rule, name: `all ${String(sets)} copies needed`, needs: { ...rule.needs, of: rule.needs.of.map((one) => ({ ...one, copies: sets })) } }
    : rule;

function asKnown(answers: Answers): Inheritance | undefined {
  const found = knownRules(answers.tree.kind).find(({ id }) => id === answers.rule)?.trait;
  if (found?.trait.type !== 'shown') return undefined;
  const { rules, canShow } = found.trait;
  return { genes: found.genes, rules: rulesFor(rules, setsIn(answers)), canShow, note: `Inherited as known for ${found.name}. ${inheritanceNote(found)}` };
}

/** How the rare trait is inherited: as the catalogue knows it, as the breeder says, or by weighted explanations where nobody knows. */
export function inheritanceOf(answers: Answers): Inheritance {
  const gene = { id: GENE, name: answers.tree.trait, ...PLAIN_GENE };
  const said = (rule: Rule | undefined): Inheritance => ({
    genes: [gene],
    rules: rule ? [{ ...every(rule, setsIn(answers)), weight: 1 }] : [],
    note: 'How it is inherited is taken as you said.',
  });
  if (answers.rule === 'one') return said(ONE);
  if (answers.rule === 'two') return said(TWO);
  return (
    asKnown(answers) ?? {
      genes: [gene, { id: SECOND, name: `helper of ${answers.tree.trait}`, ...PLAIN_GENE }],
      rules: EXPLANATIONS.map((rule) => every(rule, setsIn(answers))),
      note: 'How it is inherited is not known: each future follows one of several explanations. Their weights are a guess.',
    }
  );
}

/** The rare trait as something that shows or does not. */
export function traitOf({ tree }: Answers, { rules, note, canShow }: Inheritance, id: string): ShownTrait {
  return {
    type: 'shown',
    id,
    name: tree.trait,
    rules: [...rules],
    canShow: canShow ?? range(0.7, 0.9, 1, 'Of trees with the right genes, most are able to show it. Nobody counted this.'),
    seasonsShown: counted({ hits: tree.showed, of: tree.seasons, springs: 1 }, `seasons of ${tree.name}`),
    falseShow: range(0, 0.01, 0.03, 'Fruit that only seems to show it is rare. Nobody counted this.'),
    sharedSeason: 0.5,
    emptyIfShown: 0,
    // Half the fruit, give or take a fifth: wide, since “part of it” says no more.
    ...(tree.fruit === 'part' ? { grade: { mean: 0.5, sd: 0.2, fruitsCut: 5 } } : {}),
    note,
  };
}

const rare = () => range(0.01, 0.05, 0.15, 'What is seen on one tree is rare among its kind. How rare was not counted.');
const helping = () => range(0.05, 0.15, 0.4, 'A second gene that helps, if there is one, need not be as rare.');

/** A gene nobody has looked at, in a tree or among its neighbours; in another kind the rare one is absent. */
export function frequencies(genes: Genes, ownKind: boolean): Tree['genes'] {
  return Object.fromEntries(genes.map(({ id }) => [id, id === SECOND ? { frequency: helping() } : ownKind ? { frequency: rare() } : { copies: 0 }]));
}
export const rareInAir = (genes: Genes) => Object.fromEntries(genes.map(({ id }) => [id, id === SECOND ? helping() : rare()]));

/** Crops of a partner that never showed it, taken where the breeder only says “no”. */
const LOOKED = 3;
export function seenOn({ shows }: Pick<Partner, 'shows'>, trait: string): Tree['seen'] {
  if (shows === 'unknown') return {};
  return { [trait]: shows === 'yes' ? { source: true } : { showed: 0, seasons: LOOKED } };
}
