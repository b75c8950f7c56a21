import { answerText, asksText, futuresText, imprintText, restsText, timelineText } from '../text/handout.ts';
import type { Piece } from '../text/headline.ts';
import { timelineSvg } from './draw-timeline.ts';
import { fitted, type Fitted } from './fit.ts';
import type { FutureGroup, FutureMark } from './futures.ts';
import { ledeOf, type Handout } from './handout.ts';
import { fontFaces, LOOK, colourOf, type Fonts } from './look.ts';
import { escaped, markup, NOTHING, type Markup } from './markup.ts';
import { pageRule, sheetStyle } from './sheet-style.ts';
import { phoneScheme, timelineOf } from './timeline.ts';

const pieces = (list: readonly Piece[]): Markup[] => list.map(({ text, strong }) => (strong ? markup`<b>${text}</b>` : markup`${text}`));

/** One future: a disc, a ring, a cross, a stroke or a square, told apart without colour. */
function futureMark(mark: FutureMark, x: number, y: number, colour: string): Markup {
  switch (mark) {
    case 'proven':
      return markup`<circle cx="${x}" cy="${y}" r="3.6" fill="${colour}"/>`;
    case 'waiting':
      return markup`<circle cx="${x}" cy="${y}" r="2.9" fill="none" stroke="${LOOK.ink}" stroke-width="1.3"/>`;
    case 'cross':
      return markup`<path d="M${x - 2.8},${y - 2.8}l5.6,5.6M${x + 2.8},${y - 2.8}l-5.6,5.6" stroke="${LOOK.ink}" stroke-width="1.4"/>`;
    case 'level':
      return markup`<path d="M${x - 3.2},${y}h6.4" stroke="${LOOK.ink}" stroke-width="1.4"/>`;
    case 'upright':
      return markup`<path d="M${x},${y - 3.2}v6.4" stroke="${LOOK.ink}" stroke-width="1.4"/>`;
    case 'square':
      return markup`<rect x="${x - 2.6}" y="${y - 2.6}" width="5.2" height="5.2" fill="none" stroke="${LOOK.ink}" stroke-width="1.2"/>`;
  }
}

const ACROSS = 25;
const PITCH = 10;

function hundred(groups: readonly FutureGroup[], colour: string): Markup {
  const all = groups.flatMap(({ mark, count }) => Array.from({ length: count }, () => mark));
  const marks = all.map((mark, at) => futureMark(mark, (at % ACROSS) * PITCH + 5, Math.floor(at / ACROSS) * PITCH + 5, colour));
  const height = Math.ceil(all.length / ACROSS) * PITCH;
  const words = groups.map(({ count, words: end }) => `${String(count)}${futuresText.in100}${end}`).join('; ');
  return markup`<svg class="dots" viewBox="0 0 ${ACROSS * PITCH} ${height}" role="img" aria-label="${words}">${marks}</svg>`;
}

/** The hundred futures of the plan that others are asked to help with, as an SVG. */
export const hundredSvg = ({ futures, lead }: Handout): string => hundred(futures, colourOf(lead.mark)).text;
/** One of them, as a sign before its words. */
export const signSvg = (mark: FutureMark, { lead }: Handout): string =>
  markup`<svg viewBox="0 0 10 10" width="16" height="16" aria-hidden="true">${futureMark(mark, 5, 5, colourOf(lead.mark))}</svg>`.text;
/** Room for the picture on a phone, px: a sheet cannot draw itself anew, so it brings the picture for both, and its style shows one. */
const ROOMS = { phone: 318, least: 256 } as const;
function phonePictures(handout: Handout, id: string): Markup {
  const guesses = handout.plans.some((plan) => plan.guesses !== null);
  const picture = (width: number, of: string) => timelineSvg(timelineOf(handout, phoneScheme(width, guesses)), `${id}${of}`);
  return markup`<div class="phone">${picture(ROOMS.phone, 'p')}</div><div class="least">${picture(ROOMS.least, 'l')}</div>`;
}
/** All ways on one calendar, as a phone shows them: one picture for most phones (`.phone`), one for the smallest (`.least`). */
export const phoneTimeline = (handout: Handout, id: string): string => phonePictures(handout, id).text;

function futuresPart({ futures, lead, plans, nothing }: Handout): Markup {
  const colour = colourOf(lead.mark);
  const lines = futures.map(
    ({ mark, count, words }) =>
      markup`<li><svg viewBox="0 0 10 10" aria-hidden="true">${futureMark(mark, 5, 5, colour)}</svg><span><b>${count}</b>${futuresText.in100}${words}</span></li>`,
  );
  return markup`<h2>${futuresText.title(lead.mark, plans.length === 1)}</h2><p class="nothing">${nothing}</p>${hundred(futures, colour)}<ul class="ends">${lines}</ul>`;
}

function asksPart({ lead, plans }: Handout, { asks, moreAsks }: Fitted): Markup {
  const rows = asks.map(({ who, what, when }) => markup`<tr><th scope="row">${when}</th><td><b>${who}:</b> ${what}</td></tr>`);
  const more = moreAsks > 0 ? markup`<tr class="more"><th></th><td>${restsText.more(moreAsks)}</td></tr>` : NOTHING;
  const title = plans.length === 1 ? asksText.titleOnly : asksText.title(lead.mark, lead.name);
  return markup`<h2>${title}</h2><table class="asks"><tbody>${rows}${more}</tbody></table>`;
}

/** Own counts are filled, handbooks and practice outlined, guesses dashed: told apart by fill and line. */
const BADGE: Readonly<Record<string, string>> = { counted: 'own', published: 'firm', practice: 'firm' };

function restsPart({ rests, moreRests }: Fitted): Markup {
  const rows = rests.map(({ label, value, source, number }) => {
    const badge = source === 'unsaid' ? restsText.unsaid : restsText.badge[source];
    const note = number === null ? NOTHING : markup`<sup>${number}</sup>`;
    return markup`<li><span class="label">${label}</span><span class="value">${value}</span><span class="rank"><span class="badge ${BADGE[source] ?? 'weak'}">${badge}</span>${note}</span></li>`;
  });
  const more = moreRests > 0 ? markup`<li class="more">${restsText.more(moreRests)}</li>` : NOTHING;
  return markup`<h2 class="second">${restsText.title}</h2><ul class="rests">${rows}${more}</ul>`;
}

function footPart({ imprint, example }: Handout): Markup {
  const { link, futures, rerun, anew, file } = imprint;
  const opened = link === null ? NOTHING : markup` <a href="${link}">${imprintText.open}</a> ${imprintText.address(link.replace(/#.*$/s, ''))}.`;
  return markup`<p class="foot">${example ? `${imprintText.invented} ` : ''}${futures} <b>${rerun}</b>${opened} ${imprintText.file(file)}${anew ? ` ${imprintText.anew}` : ''}</p>`;
}

/** The sheet as markup, without its style. Ids in it begin with `id`. */
export function sheetMarkup(handout: Handout, id = 's'): string {
  const fit = fitted(handout);
  const { title, date, headline, said } = handout;
  const { text } =
    markup`<div class="frame"><article class="sheet"><div class="bar"><strong>${title}</strong><span>${date} · ${imprintText.audience}</span></div><h1><span>${fit.wanted}</span> <span>${pieces(headline.answer)}</span></h1><p class="lede">${ledeOf(said)}</p>${fit.hard === '' ? NOTHING : markup`<p class="hard"><b>${answerText.hard}</b>${fit.hard}</p>`}<div class="picture"><div class="wide">${timelineSvg(timelineOf(handout, fit.scheme), `${id}w`)}</div>${phonePictures(handout, id)}<p class="key">${timelineText.key}</p></div><div class="middle"><div>${asksPart(handout, fit)}<p class="tally">${handout.tally} ${fit.sources}</p></div><div>${futuresPart(handout)}${restsPart(fit)}</div></div><p class="care"><b>${imprintText.care}</b> ${handout.cautions.join(' ')}</p>${footPart(handout)}</article></div>`;
  return text;
}

/** Nothing but what is in the file: no script runs, nothing is asked for. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:";

/** The sheet as one file that needs nothing else: no scripts, no other file, nothing from the network. */
export function sheetFile(handout: Handout, fonts: Fonts): string {
  const { title, paper } = handout;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light">
<meta name="generator" content="Orchard Odds">
<title>${escaped(title)}</title>
<style>
${fontFaces(fonts)}
${pageRule(paper)}
html,body{margin:0;padding:0;background:#e6dfd0}
@media print{html,body{background:${LOOK.paper}}}
main{display:block}
${sheetStyle(paper).trim()}
</style>
</head>
<body>
<main>${sheetMarkup(handout)}</main>
</body>
</html>
`;
}
