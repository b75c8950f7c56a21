// Second opinion at scale: random programmes through our engine and through the independent program, every output column compared.
// Run: npx tsx sims/studies/second-opinion/run.mjs PATH-TO-oracle.mjs [programmes] [futures]. Writes results.json beside this file.
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { Simulator } from '../../../src/engine/simulate.ts';
import { parseProgramme } from '../../../src/model/read.ts';
import { FAILURES } from '../../../src/results/outlook.ts';
import { normalQuantile } from '../../../src/statistics/normal.ts';
import { convert } from './convert.mjs';
import { randomProgramme } from './generate.ts';

const [oracle, programmes = '200', futures = '300'] = process.argv.slice(2);
const { simulate } = await import(pathToFileURL(oracle).href);
const R = Number(futures);
/** Ours are cheap: four times as many, so that most of the error is theirs. */
const OURS = 4 * R;
const REASONS = {
  noFruit: 'no fruit',
  noSeedling: 'no seedling',
  noRoom: 'no room',
  seedlingsDied: 'seedlings died',
  onlyTreeLost: 'only tree lost',
  stillWaiting: 'still waiting',
  noneGoodEnough: 'none good enough',
};

const mean = (list) => list.reduce((a, b) => a + b, 0) / list.length;
function moments(column) {
  const list = Array.from(column);
  const m = mean(list);
  return { mean: m, se: Math.sqrt(list.reduce((sum, x) => sum + (x - m) ** 2, 0) / (list.length - 1) / list.length) };
}
const round = (x) => Number(x.toPrecision(5));

function compare(document, input, seed) {
  const ours = new Simulator(document).runs([0], 0, OURS)[0];
  const theirs = simulate(structuredClone(input), 0, { runs: R, seed });
  const rows = [];
  const share = (name, test, other) => {
    let hits = 0;
    for (let i = 0; i < OURS; i += 1) if (test(i)) hits += 1;
    const p = hits / OURS;
    const q = other?.p ?? 0;
    const pooled = (hits + q * R) / (OURS + R);
    const se = Math.sqrt(pooled * (1 - pooled) * (1 / OURS + 1 / R));
    rows.push({ name, ours: round(p), theirs: round(q), z: se > 0 ? round((p - q) / se) : 0 });
  };
  const amount = (name, column, other) => {
    const { mean: m, se } = moments(column);
    // A column that never varies on one side has no standard error there; equal to a thousandth counts as equal.
    const both = Math.hypot(se, other.se);
    rows.push({
      name,
      ours: round(m),
      theirs: round(other.mean),
      z: both > 0 && Math.abs(m - other.mean) > 1e-3 * Math.abs(m) ? round((m - other.mean) / both) : 0,
    });
  };
  const failure = ours.run('failure');
  share('proven', (i) => ours.run('yearProven')[i] >= 0, theirs.chance);
  share('stood', (i) => ours.run('yearStood')[i] >= 0, theirs.stood);
  for (const [name, key] of [
    ['seedlings', 'seedlings'],
    ['planted', 'planted'],
    ['fruiting', 'bearing'],
    ['flowers', 'flowers'],
    ['fruits', 'fruits'],
    ['grafts', 'grafts'],
    ['weakSaved', 'weakGrafted'],
    ['tests', 'tests'],
    ['judgings', 'judged'],
    ['noRoom', 'noRoom'],
  ])
    amount(name, ours.run(name), theirs[key]);
  for (const [name, key] of [
    ['treeYears', 'treeYears'],
    ['mostPlaces', 'mostPlaces'],
    ['totalHours', 'hours'],
    ['busiestHours', 'busiestHours'],
  ])
    amount(name, ours.amount(name), theirs[key]);
  for (const [name, key] of Object.entries(REASONS)) share(name, (i) => failure[i] === FAILURES.indexOf(name), theirs.why[key]);
  return rows;
}

const compared = [];
let skipped = 0;
for (let n = 0, made = 0; made < Number(programmes); n += 1) {
  const input = randomProgramme(`second opinion ${n}`);
  const reading = parseProgramme(convert(JSON.parse(JSON.stringify(input)), { word: `ours ${n}`, runs: 1000 }));
  // A generation that crosses a pair of kinds without an entry is refused by both; the next word is taken.
  if (!reading.ok) {
    skipped += 1;
    continue;
  }
  made += 1;
  compared.push({ word: `second opinion ${n}`, columns: compare(reading.programme, input, `theirs ${n}`) });
  if (process.stderr.isTTY) process.stderr.write(`\r${made} of ${programmes}`);
}
const all = compared.flatMap(({ word, columns }) => columns.map((column) => ({ word, ...column })));
const limit = normalQuantile(1 - 0.01 / 2 / all.length);
const beyond = all.filter(({ z }) => Math.abs(z) > limit).sort((a, b) => Math.abs(b.z) - Math.abs(a.z));
const byColumn = {};
for (const { name, z } of all) {
  const entry = (byColumn[name] ??= { compared: 0, beyond: 0, meanSquare: 0 });
  entry.compared += 1;
  if (Math.abs(z) > limit) entry.beyond += 1;
  else entry.meanSquare += z * z;
}
for (const entry of Object.values(byColumn)) entry.meanSquare = round(entry.meanSquare / Math.max(1, entry.compared - entry.beyond));
const summary = {
  programmes: compared.length,
  skipped,
  futuresOurs: OURS,
  futuresTheirs: R,
  comparisons: all.length,
  control: 'Bonferroni, 1 % over all comparisons',
  limit: round(limit),
  beyond: beyond.length,
};
writeFileSync(new URL('./results.json', import.meta.url), `${JSON.stringify({ summary, byColumn, beyond, compared }, null, 1)}\n`);
console.log(summary, byColumn, beyond);
