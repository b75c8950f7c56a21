import { html, type TemplateResult } from 'lit';
import type { Programme } from '../../../model/programme.ts';
import '../../log-import/log-import.ts';

/** A part of “What has happened?”, drawn for the document as it stands. */
export type Section = (programme: Programme) => TemplateResult;

/** Places for parts of the page: the forecast from today above the log; what the counts teach, and files, under it. */
export type SectionName = 'today' | 'learned' | 'inheritance' | 'losers' | 'files';

/** Above the log, in this order. */
export const BEFORE_THE_LOG: readonly SectionName[] = ['today'];
/** Under the log, in this order. */
export const AFTER_THE_LOG: readonly SectionName[] = ['learned', 'inheritance', 'losers', 'files'];

/** The parts there are; one that has no line here leaves no gap. Each needs at least one batch in the log, but files, which can bring some in. */
export const SECTIONS: Partial<Record<SectionName, Section>> = {
  files: (programme) => html`<oo-log-import .programme=${programme}></oo-log-import>`,
};
