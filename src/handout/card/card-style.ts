import { SANS, SERIF } from '../look.ts';
import { Markup } from '../markup.ts';
import { EM, PAPERS } from './fit.ts';

const em = (length: number): string => `${String(length)}em`;

/** Rules of the card: black on white, lines thick enough for a bad printer, boxes large enough for a pencil. */
export function cardStyle(paper: keyof typeof PAPERS, points: number): Markup {
  const { width, height, margin } = PAPERS[paper];
  const [wide, high, edge] = [width, height, margin].map((mm) => `${String(mm)}mm`);
  return new Markup(`
@page { size: ${wide ?? ''} ${high ?? ''}; margin: 0; }
* { box-sizing: border-box; }
html { background: #fff; color: #000; }
body { margin: 0; font: ${String(points)}pt/${String(EM.line)} ${SANS}; font-variant-numeric: tabular-nums lining-nums; }
main { display: flex; flex-direction: column; width: ${wide ?? ''}; height: calc(${high ?? ''} - 0.3mm); padding: ${edge ?? ''}; overflow: hidden; }
p, ul, h1, h2 { margin: 0; padding: 0; }
header { display: flex; align-items: center; justify-content: space-between; height: ${em(EM.title)}; }
h1 { font: 600 1.75em/1 ${SERIF}; }
.letter { display: grid; place-items: center; width: 1.7em; height: 1.7em; border: 1.6pt solid #000; border-radius: 50%; font-weight: 700; line-height: 1; }
.of { padding-bottom: 0.3em; border-bottom: 1.2pt solid #000; }
h2 { display: flex; justify-content: space-between; align-items: baseline; font: 600 1.12em/1.2 ${SERIF}; margin: 0.34em 0 0.08em; }
h2 span { font: 400 ${em(EM.small / 1.12)}/1.2 ${SANS}; }
table { border-collapse: collapse; width: 100%; }
td, th { padding: ${em(EM.row / 2)} 0; vertical-align: top; text-align: left; font-weight: 400; }
.month { font-weight: 650; white-space: nowrap; padding-right: 0.6em; width: 1%; }
.jobs td:nth-child(2) { width: ${em(EM.box + 0.5)}; }
.often { text-align: right; padding-left: 0.5em; width: ${em(EM.often)}; font-weight: 650; }
.box { display: inline-block; width: ${em(EM.box)}; height: ${em(EM.box)}; border: 0.7pt solid #000; vertical-align: -0.2em; }
.how { font-size: ${em(EM.small)}; }
ul { list-style: none; }
li { padding-top: 0.2em; }
.tally { display: flex; flex-wrap: wrap; gap: 0.22em ${em(EM.boxGap)}; padding: 0.1em 0; }
.tally .box:nth-child(10n) { margin-right: 0.5em; }
.blanks { display: flex; gap: 0.8em; height: ${em(EM.blank)}; align-items: end; }
.blanks span { flex: 1; display: flex; gap: 0.3em; align-items: end; white-space: nowrap; }
.blanks i { flex: 1; border-bottom: 0.7pt solid #000; margin-bottom: 0.25em; }
.fill { flex: 1 1 0; min-height: 0; display: flex; flex-direction: column; }
.fill > div { flex: 1 1 0; min-height: 0; overflow: hidden; }
.ruled { height: ${em(EM.ruled)}; border-bottom: 0.7pt solid #000; }
.seen { table-layout: fixed; }
.seen th { font-size: ${em(EM.small)}; line-height: 1.25; padding: 0 0.4em; }
.seen th:first-child { width: 24%; padding-left: 0; }
.seen th:last-child { width: 38%; }
.seen td { height: ${em(EM.ruled)}; border: 0.7pt solid #000; }
.seen td:first-child { border-left: 0; }
.seen td:last-child { border-right: 0; }
footer { margin-top: 0.5em; padding-top: 0.25em; border-top: 1.2pt solid #000; font-size: ${em(EM.small)}; }
@media screen { html { overflow: hidden; } }
`);
}
