import type { Source } from '../model/estimate.ts';
import type { CatalogueTrait } from './types.ts';

/** What a note of the document says of a source: notes have no badge. */
const KINDS: Readonly<Record<Source['kind'], string>> = {
  counted: 'Counted',
  published: 'Published',
  practice: 'Common practice',
  remembered: 'Only remembered, not looked up again',
  guess: 'A guess',
  invented: 'Invented',
};

/** “Published, high confidence: Okie 1996, …” */
export const sourceNote = ({ kind, confidence, note }: Source): string =>
  `${KINDS[kind]}${confidence === undefined ? '' : `, ${confidence} confidence`}: ${note}`;

/** How a trait is inherited and where that is known from, as a note for the document. */
export const inheritanceNote = ({ summary, source, trait }: CatalogueTrait): string => `${trait.note ?? summary} ${sourceNote(source)}`;
