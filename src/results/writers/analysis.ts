import type { Programme } from '../../model/programme.ts';
import type { Outlook } from '../outlook.ts';
import { hashOf } from '../hash.ts';
import { resultsDocument, type ResultsDocument } from './json.ts';

export const ANALYSIS_FORMAT = 'orchard-odds analysis';
export const ANSWERS_FORMAT = 'orchard-odds answers';
export const ANALYSIS_VERSION = 1;

/** What figures come from: with this and the programme, the same figures can be made again. */
export interface Provenance {
  readonly engine: string;
  readonly word: string;
  readonly runs: number;
  readonly guessesAsTheyStand: boolean;
  /** SHA-256 of the canonical JSON of `programme` (RFC 8785); null where the page came over no safe line. */
  readonly programmeHash: string | null;
  /** Version of the programme's document. */
  readonly documentVersion: number;
  /** Calendar day, year-month-day. */
  readonly date: string;
}

/** Results with what they come from, and the programme itself. */
export interface AnalysisDocument {
  readonly format: typeof ANALYSIS_FORMAT;
  readonly version: typeof ANALYSIS_VERSION;
  readonly provenance: Provenance;
  readonly results: ResultsDocument;
  readonly programme: Programme;
}

/** An answer of “Would it pay to…?” with the way it was asked. */
export interface AnswerEntry {
  readonly question: string;
  /** The answer's own data: futures, findings, tables; or why it cannot be said. */
  readonly answer: unknown;
}

export interface AnswersDocument {
  readonly format: typeof ANSWERS_FORMAT;
  readonly version: typeof ANALYSIS_VERSION;
  readonly provenance: Provenance;
  readonly answers: readonly AnswerEntry[];
  readonly programme: Programme;
}

export interface Origin {
  readonly programme: Programme;
  readonly engine: string;
  readonly runs: number;
  readonly date: string;
}

async function provenanceOf({ programme, engine, runs, date }: Origin): Promise<Provenance> {
  const { shuffleWord, guessesAsTheyStand, version } = programme;
  const programmeHash = await hashOf(programme).catch(() => null);
  return { engine, word: shuffleWord, runs, guessesAsTheyStand, programmeHash, documentVersion: version, date };
}

/** The whole analysis as one document. */
export async function analysisDocument(outlook: Outlook, origin: Origin): Promise<AnalysisDocument> {
  const { programme } = origin;
  const provenance = await provenanceOf({ ...origin, engine: outlook.engine, runs: outlook.runs });
  const results = resultsDocument({ ...outlook, programme: provenance.programmeHash ?? '' }, programme);
  return { format: ANALYSIS_FORMAT, version: ANALYSIS_VERSION, provenance, results, programme };
}

/** The answers that are there, as one document. */
export async function answersDocument(answers: readonly AnswerEntry[], origin: Origin): Promise<AnswersDocument> {
  return { format: ANSWERS_FORMAT, version: ANALYSIS_VERSION, provenance: await provenanceOf(origin), answers, programme: origin.programme };
}

/** Readable JSON with a line end. Numbers that JSON has no form for, as an answer's “never”, are written as null. */
export const documentJson = (document: AnalysisDocument | AnswersDocument): string => `${JSON.stringify(document, null, 2)}\n`;
