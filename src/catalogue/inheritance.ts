import type { Source } from '../model/estimate.ts';
import { PLAIN_GENE } from '../model/plain.ts';
import type { Rule, ShownTrait } from '../model/programme.ts';
import { guess } from './sources.ts';
import type { CatalogueTrait, Figure } from './types.ts';

type Needs = Rule['needs'];
export interface GeneName {
  readonly id: string;
  readonly name: string;
  readonly note?: string;
}

/** What a data file says of a trait; the rest is: every able tree shows it, every season. */
export interface TraitFigures {
  readonly id: string;
  readonly name: string;
  readonly summary: string;
  readonly source: Source;
  readonly canShow?: Figure;
  readonly seasonsShown?: Figure;
  readonly falseShow?: Figure;
  readonly emptyIfShown?: Figure;
  readonly note?: string;
}

const ALWAYS = guess(1, 'Taken as always, nothing else was printed: lower it if some trees with the genes do not show it.');
const NEVER_WRONG = guess(0, 'Taken as never, nothing else was printed: raise it if other trees can be mistaken for it.');

/** A trait that is shown or not, with its rules weighted. */
export function shownBy(figures: TraitFigures, genes: readonly GeneName[], rules: readonly Rule[]): CatalogueTrait {
  const { id, name, summary, source, canShow = ALWAYS, seasonsShown = ALWAYS, falseShow = NEVER_WRONG, emptyIfShown = NEVER_WRONG, note } = figures;
  const trait: ShownTrait = {
    type: 'shown',
    id,
    name,
    rules: [...rules],
    canShow,
    seasonsShown,
    falseShow,
    sharedSeason: 0.5,
    emptyIfShown,
    note: note === undefined ? summary : `${summary} ${note}`,
  };
  return { id, name, summary, source, genes: genes.map((gene) => ({ ...gene, ...PLAIN_GENE })), trait };
}

const copiesOf = (gene: string, copies: 1 | 2): Needs => ({ needs: 'all', of: [{ gene, copies }] });
export const rule = (name: string, weight: number, needs: Needs): Rule => ({ name, weight, needs });

/** Dominant: shown by trees with one copy or two. */
export const oneCopy = ({ gene, ...figures }: TraitFigures & { readonly gene: GeneName }): CatalogueTrait =>
  shownBy(figures, [gene], [rule('one copy is enough', 1, copiesOf(gene.id, 1))]);

/** Recessive: shown by trees with two copies only. */
export const twoCopies = ({ gene, ...figures }: TraitFigures & { readonly gene: GeneName }): CatalogueTrait =>
  shownBy(figures, [gene], [rule('two copies are needed', 1, copiesOf(gene.id, 2))]);
