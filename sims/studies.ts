import { writeFileSync } from 'node:fs';
import { picture } from './studies/validation/picture.ts';
import { report, zScores } from './studies/validation/report.ts';
import { study } from './studies/validation/study.ts';

/** Reruns every published check at full numbers and writes docs/validation.md, .json and .svg. No dates, no timings: the same bytes every time. */
const result = study();
const file = (name: string): URL => new URL(`../docs/${name}`, import.meta.url);
writeFileSync(file('validation.json'), `${JSON.stringify(result, null, 1)}\n`);
writeFileSync(file('validation.md'), `${report(result).trimEnd()}\n`);
writeFileSync(file('validation.svg'), picture(zScores(result)));
const differing = result.rows.filter(({ verdict }) => verdict === 'differs');
process.stdout.write(`${String(result.rows.length)} checks, ${String(differing.length)} differ: ${differing.map(({ id }) => id).join(', ')}\n`);
if (differing.some(({ why }) => why === undefined)) process.exitCode = 1;
