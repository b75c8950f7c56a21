import { html, type TemplateResult } from 'lit';
import type { Programme } from '../../../model/programme.ts';
import '../../inheritance/inheritance.ts';
import '../../learned/learned.ts';
import '../../log-import/log-import.ts';
import '../../losers/losers.ts';
import '../../today/forecasts.ts';
import '../../today/today.ts';

/** A part of “What has happened?”, drawn for the document as it stands; null where it has nothing to say. */
export type Section = (programme: Programme) => TemplateResult | null;

/** Places for parts of the page: the forecast from today above the log; what the counts teach, how forecasts fared, and files, under it. */
export type SectionName = 'today' | 'learned' | 'inheritance' | 'losers' | 'forecasts' | 'files';

/** Above the log, in this order. */
export const BEFORE_THE_LOG: readonly SectionName[] = ['today'];
/** Under the log, in this order. */
export const AFTER_THE_LOG: readonly SectionName[] = ['learned', 'inheritance', 'losers', 'forecasts', 'files'];

/** Whether any tree was looked at for a trait that shows or not. */
const anyLookedAt = ({ log }: Programme): boolean =>
  log.batches.some(({ trees }) => trees.some(({ seasons }) => seasons.some(({ seen }) => Object.keys(seen).length > 0)));

/** The parts there are; one that has no line here leaves no gap. Each needs at least one batch in the log, but files, which can bring some in. */
export const SECTIONS: Partial<Record<SectionName, Section>> = {
  today: () => html`<oo-today></oo-today>`,
  forecasts: () => html`<oo-forecasts></oo-forecasts>`,
  learned: (programme) => html`<oo-learned .programme=${programme}></oo-learned>`,
  inheritance: (programme) => (anyLookedAt(programme) ? html`<oo-inheritance .programme=${programme}></oo-inheritance>` : null),
  losers: (programme) => (anyLookedAt(programme) ? html`<oo-losers .programme=${programme}></oo-losers>` : null),
  files: (programme) => html`<oo-log-import .programme=${programme}></oo-log-import>`,
};
