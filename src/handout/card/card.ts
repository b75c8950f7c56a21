import type { Programme } from '../../model/programme.ts';
import { cardText, jobWords, monthName, seasonName } from '../../text/card.ts';
import { cautions } from '../../text/app.ts';
import { markup, NOTHING, type Markup } from '../markup.ts';
import type { Job } from '../../results/season.ts';
import type { Climate } from './jobs.ts';

export interface CardOptions extends Climate {
  readonly paper: 'A6' | 'A5';
  /** Calendar year of the bloom. */
  readonly year: number;
  readonly planName: string;
  /** ISO date of printing. */
  readonly date: string;
}

/** Boxes to tick, one for each ten flowers; more do not fit a line. */
const TALLY_MOST = 30;
const FLOWERS_A_BOX = 10;
const TAG_LINES = 6;

/**
 * Returns the card of one season as a page of its own: jobs by month, boxes to tally flowers and fruits, fruits to cut per tree, lines for tag
 * numbers. No script, no colour, no thin grey: it is read outdoors and written on with a pencil.
 */
export function cardPage(programme: Programme, jobs: readonly Job[], options: CardOptions): string {
  const { paper, year, planName, date } = options;
  const season = seasonName(year, options.bloomMonth);
  return markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${cardText.title(season)}</title>
<style>${{ A6: STYLE('105mm', '148mm', 8), A5: STYLE('148mm', '210mm', 10.5) }[paper]}</style>
</head>
<body>
<main>
<h1>${season}</h1>
<p class="of">${programme.title} · ${planName}</p>
${jobs.length === 0 ? markup`<p>${cardText.nothing}</p>` : markup`<table><caption>${cardText.jobs}</caption><tbody>${jobs.map(row)}</tbody></table>`}
${tallies(jobs)}
${judging(jobs)}
${tags(jobs, year)}
<p class="care">${cautions.kernels} ${cautions.knives} ${cautions.moving}</p>
<p class="foot">${cardText.foot(date)}</p>
</main>
</body>
</html>
`.text;
}

const row = (job: Job): Markup =>
  markup`<tr><th scope="row">${monthName(job.month)}</th><td><span class="box"></span></td><td>${jobWords(job)}${job.share < 0.95 ? markup` <i>${cardText.share(job.share)}</i>` : NOTHING}</td></tr>`;

/** A line of boxes for each cross that is pollinated, ten flowers a box, and room for the fruits. */
function tallies(jobs: readonly Job[]): Markup {
  const lines = jobs
    .filter(({ kind }) => kind === 'pollinate')
    .flatMap(({ crosses, amount }) => crosses.map((cross) => ({ cross, boxes: Math.min(TALLY_MOST, Math.max(1, Math.ceil((amount ?? 0) / FLOWERS_A_BOX))) })));
  if (lines.length === 0) return NOTHING;
  return markup`<section><h2>${cardText.tally}</h2>${lines.map(
    ({ cross, boxes }) =>
      markup`<div class="tally"><b>${cross}</b><span>${Array.from({ length: boxes }, () => markup`<span class="box"></span>`)}</span><span class="set">${cardText.set}</span></div>`,
  )}</section>`;
}

/** How many fruits to cut from each tree, and lines to note what was seen. */
function judging(jobs: readonly Job[]): Markup {
  const [judge] = jobs.filter(({ kind }) => kind === 'judge');
  if (!judge) return NOTHING;
  const lines = Array.from({ length: TAG_LINES }, () => markup`<tr><td></td><td></td><td></td><td></td></tr>`);
  return markup`<section><h2>${cardText.judge(judge.amount)}</h2><table class="lines"><thead><tr>${cardText.judgeColumns.map((words) => markup`<th scope="col">${words}</th>`)}</tr></thead><tbody>${lines}</tbody></table></section>`;
}

/** Numbers of the tags that this season's seedlings get: year, cross, seedling. */
function tags(jobs: readonly Job[], year: number): Markup {
  const crosses = jobs.filter(({ kind }) => kind === 'pollinate' || kind === 'gatherOpen').flatMap((job) => job.crosses);
  if (crosses.length === 0) return NOTHING;
  return markup`<section><h2>${cardText.tags}</h2><p>${cardText.tagsHow}</p><ul>${crosses.map(
    (cross, i) => markup`<li><b>${String(year)}-${String(i + 1)}-…</b> ${cross} <span class="line"></span></li>`,
  )}</ul></section>`;
}

const STYLE = (width: string, height: string, points: number): Markup =>
  markup`@page { size: ${width} ${height}; margin: 7mm; }
* { box-sizing: border-box; }
html { font: ${points}pt/1.3 'Source Sans 3', 'Source Sans 3 Variable', system-ui, sans-serif; color: #000; background: #fff; font-variant-numeric: tabular-nums lining-nums; }
body { margin: 0; }
main { max-width: ${width}; margin: 0 auto; }
h1 { font: 600 1.5em/1.2 'Brygada 1918', 'Brygada 1918 Variable', Georgia, serif; margin: 0; }
h2, caption { font: 600 1.1em/1.2 'Brygada 1918', 'Brygada 1918 Variable', Georgia, serif; margin: 0.7em 0 0.2em; text-align: left; }
p { margin: 0.2em 0; }
table { border-collapse: collapse; width: 100%; }
th { text-align: left; font-weight: 600; vertical-align: top; padding: 0.15em 0.6em 0.15em 0; white-space: nowrap; }
td { vertical-align: top; padding: 0.15em 0.4em 0.15em 0; }
.box { display: inline-block; width: 1.05em; height: 1.05em; border: 1px solid #000; margin-right: 0.25em; vertical-align: -0.15em; }
.tally { margin: 0.25em 0; break-inside: avoid; }
.tally > span { display: block; }
.set { margin-top: 0.2em; }
.lines td { border: 1px solid #000; height: 1.7em; }
ul { list-style: none; margin: 0; padding: 0; }
li { display: flex; gap: 0.5em; align-items: baseline; margin: 0.3em 0; }
.line { flex: 1; border-bottom: 1px solid #000; }
.care { margin-top: 0.7em; border-top: 1px solid #000; padding-top: 0.3em; font-size: 0.85em; }
.foot { font-size: 0.85em; }`;
