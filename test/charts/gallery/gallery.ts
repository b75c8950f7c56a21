/** Shows every picture with the fixture's invented figures: ?open opens a row, ?stale, ?compact, ?extreme, ?still, ?load=places, ?theme=dark; for eyes and for test/page/gallery.test.ts. */
import { dressPage } from '../../../src/styles/page.ts';
import '../../../src/components/charts/lanes/lanes.ts';
import '../../../src/components/charts/chance-by-year/chance-by-year.ts';
import '../../../src/components/charts/side-by-side/side-by-side.ts';
import '../../../src/components/charts/busiest-years/busiest-years.ts';
import '../../../src/components/charts/flower-to-pick/flower-to-pick.ts';
import '../../../src/components/charts/last-spring/last-spring.ts';
import '../../../src/components/charts/why-futures-fail/why-futures-fail.ts';
import '../../../src/components/charts/years-against-trees/years-against-trees.ts';
import '../../../src/components/pay/graft/graft-map.ts';
import '../../../src/components/pay/graft/graft-roots.ts';
import '../../../src/components/pay/when/when-picture.ts';
import '../../../src/components/pay/copies/copies-picture.ts';
import '../../../src/components/inheritance/chances-picture.ts';
import '../../../src/components/learned/rates-picture.ts';
import type { Futures } from '../../../src/charts/years-against-trees/layout.ts';
import { FIXTURE_COLUMNS } from '../fixture-columns.ts';
import { FIXTURE_FUTURES } from '../fixture-futures.ts';
import type { RowEvent } from '../../../src/components/charts/lanes/lanes.ts';
import { EXTREME } from '../fixture-extreme.ts';
import { FIXTURE, FIXTURE_WORDS } from '../fixture.ts';
import { RATES } from '../learned-rows.ts';
import { COPIES, mapOf, RISING, ROOTS, standingAt, WHEN, whenOf } from '../pay-answers.ts';

const wanted = new URLSearchParams(location.search);
dressPage(document);
const theme = wanted.get('theme');
if (theme) document.documentElement.dataset['theme'] = theme;
const main = document.querySelector('main');

const lanes = document.createElement('oo-lanes');
lanes.compact = wanted.has('compact');
lanes.still = wanted.has('still');
lanes.innerHTML =
  '<form slot="settings" style="padding: 22px 28px; min-height: 200px"><label>Flowers each spring <input inputmode="decimal" value="400"></label> flowers</form>';
lanes.addEventListener('oo-row', (event) => {
  const { plan, generation, open } = (event as RowEvent).detail;
  lanes.open = open ? { plan, generation } : null;
});
if (wanted.has('open')) lanes.open = { plan: 'rescue', generation: 'wide-graft' };

const sides = document.createElement('oo-side-by-side');
sides.limits = { hours: 160, places: 120 };
const clouds = document.createElement('oo-years-against-trees');
clouds.futures = wanted.has('extreme')
  ? EXTREME.plans.flatMap(({ id }, index) => ({ ...FIXTURE_FUTURES[index % FIXTURE_FUTURES.length], plan: id }) as Futures)
  : FIXTURE_FUTURES;
const busy = document.createElement('oo-busiest-years');
busy.columns = wanted.has('extreme') ? EXTREME.plans.flatMap((_, index) => FIXTURE_COLUMNS[index % FIXTURE_COLUMNS.length] ?? []) : FIXTURE_COLUMNS;
busy.limits = wanted.has('extreme')
  ? { hours: null, places: 70, bloomDays: 4, flowersPerDay: 280 }
  : { hours: 150, places: 120, bloomDays: 8, flowersPerDay: 160 };
const load = wanted.get('load');
if (load === 'flowers' || load === 'places') busy.load = load;
const pictures = [
  lanes,
  document.createElement('oo-chance-by-year'),
  clouds,
  document.createElement('oo-why-futures-fail'),
  sides,
  document.createElement('oo-flower-to-pick'),
  busy,
  document.createElement('oo-last-spring'),
];
for (const picture of pictures) {
  picture.outlook = wanted.has('extreme') ? EXTREME : FIXTURE;
  picture.words = FIXTURE_WORDS;
  picture.stale = wanted.has('stale');
  picture.addEventListener('oo-lift', ((event: CustomEvent<{ plan: string | null }>) =>
    pictures.forEach((other) => (other.lifted = event.detail.plan))) as EventListener);
}

// Pictures of answers: one plan each.
const map = document.createElement('oo-graft-map');
map.answer = {
  plan: 'rescue',
  map: wanted.has('extreme') ? mapOf(5, () => 0.9) : mapOf(15, RISING),
  standing: wanted.has('extreme') ? standingAt(80, 0.95) : standingAt(5, 0.6),
};
const roots = document.createElement('oo-graft-roots');
roots.answer = { roots: ROOTS, rootChance: wanted.has('extreme') ? 1 : 0.65 };
const when = document.createElement('oo-when-to-graft');
when.answer = wanted.has('extreme') ? whenOf({ stands: 24, best: 24, level: { from: 18, to: 24 } }) : WHEN;
when.lastYear = FIXTURE.lastYear;
const copies = document.createElement('oo-copies');
copies.answer = COPIES;
const answers = [map, roots, when, copies];
for (const picture of answers) {
  picture.mark = 'D';
  picture.stale = wanted.has('stale');
}

// Pictures of what the log teaches.
const rates = document.createElement('oo-rates-picture');
rates.answer = RATES.map((row) => ({ ...row, act: row.used ? ('back' as const) : ('use' as const), nine: null, source: 'my counts 2027–2036' }));
const chances = document.createElement('oo-chances-picture');
chances.reads = 'Explanation to read';
chances.summary = 'Chance of each explanation, before and with the counts.';
chances.heads = ['Explanation', 'Before', 'Now'];
chances.answer = [
  { id: 'one', name: 'one copy is enough', note: '', before: 0.5, after: wanted.has('extreme') ? 1 : 0.72, strong: '72 in 100', plain: 'was 50' },
  { id: 'two', name: 'two genes, one copy of each, said at some length', note: '11 trees', before: null, after: 0, strong: 'under 1 in 100', plain: '' },
].map((row) => ({ ...row, words: row.name, cells: [row.name, row.plain, row.strong] }));
const lessons = [rates, chances];
for (const picture of lessons) picture.stale = wanted.has('stale');
main?.append(...pictures, ...answers, ...lessons);
void Promise.all([...pictures, ...answers, ...lessons].map((picture) => picture.updateComplete))
  .then(() => document.fonts.ready)
  .then(() => main?.setAttribute('data-ready', ''));
