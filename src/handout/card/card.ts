import type { Programme } from '../../model/programme.ts';
import type { Job } from '../../results/season.ts';
import { cardText, jobWords, monthName, seasonName } from '../../text/card.ts';
import { fontFaces, type Fonts } from '../look.ts';
import { markup, NOTHING, Markup } from '../markup.ts';
import { cardStyle } from './card-style.ts';
import { crossesOn, fittedCard, type CrossLine } from './fit.ts';
import type { Climate } from './jobs.ts';

export type CardPaper = 'A6' | 'A5';

export interface CardOptions extends Climate {
  readonly paper: CardPaper;
  /** Calendar year of the bloom. */
  readonly year: number;
  /** Letter of the plan. */
  readonly mark: string;
  readonly planName: string;
  /** ISO date of printing. */
  readonly date: string;
}

/** More lines than any paper has room for: what does not fit is cut off below the last whole one. */
const RULED_LINES = 40;
const COLUMNS = 4;

/**
 * Returns the card of one season as a page of its own, which fits its paper: jobs by month with boxes to tick, crosses with their tags and
 * boxes to tally flowers, fruits to cut of each tree, and ruled lines over all that is left. No script, no colour, no grey: it is read
 * outdoors and written on with a pencil.
 * @param fonts within the page; without them it is set in what the reader's device has
 */
export function cardPage(programme: Programme, jobs: readonly Job[], options: CardOptions, fonts: Fonts | null = null): string {
  const { paper, year, mark, planName, date } = options;
  const season = seasonName(year, options.bloomMonth);
  const fit = fittedCard(jobs, year, paper);
  const judge = jobs.find(({ kind }) => kind === 'judge');
  return markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${cardText.title(season)}</title>
<style>${fonts ? new Markup(fontFaces(fonts)) : NOTHING}${cardStyle(paper, fit.points)}</style>
</head>
<body>
<main>
<header><h1>${season}</h1><span class="letter">${mark}</span></header>
<p class="of">${programme.title} · ${planName}</p>
${jobs.length === 0 ? markup`<p class="nothing">${cardText.nothing}</p>` : jobsTable(fit.jobs, fit.left)}
${crosses(crossesOn(jobs, year))}
${judge ? seen(judge) : notes()}
<footer><p>${cardText.care}</p><p>${cardText.foot(date)}</p></footer>
</main>
</body>
</html>
`.text;
}

/** Jobs with their month before the first of each; what comes up in some futures only says in how many of ten. */
function jobsTable(jobs: readonly Job[], left: number): Markup {
  const rows = jobs.map((job, at) => {
    const before = jobs[at - 1];
    const month = before?.month === job.month && before.yearsOn === job.yearsOn ? NOTHING : markup`${monthName(job.month)}`;
    const often = job.share < 0.95 ? markup`${cardText.often(job.share)}` : NOTHING;
    return markup`<tr class="job"><td class="month">${month}</td><td><span class="box"></span></td><td class="what">${jobWords(job)}</td><td class="often">${often}</td></tr>`;
  });
  const more = left > 0 ? markup`<tr><td></td><td></td><td>${cardText.left(left)}</td><td></td></tr>` : NOTHING;
  return markup`<section><h2>${cardText.jobs}<span>${jobs.some(({ share }) => share < 0.95) ? cardText.oftenHead : ''}</span></h2><table class="jobs"><tbody>${rows}${more}</tbody></table></section>`;
}

/** A line of boxes for each cross that is pollinated, ten flowers a box, the begin of its tags, and room for what was counted. */
function crosses(lines: readonly CrossLine[]): Markup {
  if (lines.length === 0) return NOTHING;
  const blank = (words: string): Markup => markup`<span>${words}<i></i></span>`;
  const each = lines.map(
    ({ tag, cross, boxes }) =>
      markup`<li><p><b>${tag}</b> ${cross}</p>${boxes === 0 ? NOTHING : markup`<p class="tally">${Array.from({ length: boxes }, () => markup`<span class="box"></span>`)}</p>`}<p class="blanks">${(boxes === 0 ? cardText.blanksOpen : cardText.blanks).map(blank)}</p></li>`,
  );
  return markup`<section><h2>${cardText.crosses}</h2><p class="how">${cardText.tagsHow}</p><ul>${each}</ul></section>`;
}

/** How many fruits to cut of each tree, and lines to note what was seen. */
function seen({ amount }: Job): Markup {
  const lines = Array.from({ length: RULED_LINES }, () => markup`<tr>${Array.from({ length: COLUMNS }, () => markup`<td></td>`)}</tr>`);
  return markup`<section class="fill"><h2>${cardText.judge(amount)}</h2><div><table class="seen"><thead><tr>${cardText.judgeColumns.map((words) => markup`<th scope="col">${words}</th>`)}</tr></thead><tbody>${lines}</tbody></table></div></section>`;
}

function notes(): Markup {
  return markup`<section class="fill"><h2>${cardText.notes}</h2><div>${Array.from({ length: RULED_LINES }, () => markup`<p class="ruled"></p>`)}</div></section>`;
}
