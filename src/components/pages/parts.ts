import { html, nothing, type TemplateResult } from 'lit';
import type { Problem } from '../../model/problem.ts';
import type { Programme } from '../../model/programme.ts';
import type { RunsState } from '../../state/runs-store.ts';
import { app, cautions, likely } from '../../text/app.ts';
import type { Piece } from '../../text/headline.ts';
import { problemInWords } from '../../text/place.ts';

/** Sentence pieces, findings in bold. */
export const pieces = (list: readonly Piece[]) => list.map(({ text, strong }) => (strong ? html`<b>${text}</b>` : text));

/** How far the futures are, in words and a thin line; or why they stopped. */
export function progress({ done, wanted, phase, failure }: RunsState): TemplateResult {
  if (failure !== null) return html`<p class="problems" role="alert">${likely.failed(failure)}</p>`;
  const share = wanted > 0 ? Math.min(1, done / wanted) : 0;
  return html`<div class="progress">
    <span class="track" aria-hidden="true"><i style="width: ${String(Math.round(share * 100))}%"></i></span>
    <span class="quiet">${likely.progress(done, wanted)}${phase === 'guesses' ? html` · ${likely.guessing}` : nothing}</span>
  </div>`;
}

/** All problems in one list, each with its way out. */
export function problemList(programme: Programme, all: readonly Problem[]): TemplateResult | typeof nothing {
  // What is only flagged in the log is said where it stands there, and touches no future.
  const problems = all.filter(({ stops, path }) => stops || path[0] !== 'log');
  if (problems.length === 0) return nothing;
  const stops = problems.some((problem) => problem.stops);
  return html`<div class="problems ${stops ? '' : 'notes'}" role="status">
    <p>${stops ? likely.problems : likely.notes}</p>
    <ul>
      ${problems.map((problem) => html`<li>${problemInWords(programme, problem)}</li>`)}
    </ul>
  </div>`;
}

/** Cautions that the content touches; local authorities and licensed practice decide. */
export function care({ plans, shuffleWord, runs }: Programme, engine: string): TemplateResult {
  const grafts = plans.some(({ generations }) =>
    generations.some(({ rescue, backup }) => backup !== undefined || (rescue !== undefined && rescue.who !== 'none')),
  );
  return html`<section class="care" aria-label=${cautions.title}>
    <p>${cautions.always}</p>
    <ul>
      <li>${cautions.kernels}</li>
      <li>${cautions.moving}</li>
      <li>${cautions.protected}</li>
      ${grafts ? html`<li>${cautions.knives}</li>` : nothing}
    </ul>
    <p>${app.fineprint(engine, shuffleWord, runs)}</p>
  </section>`;
}
