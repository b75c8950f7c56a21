import { html, nothing, type TemplateResult } from 'lit';
import type { Course } from '../../genetics/tray/course.ts';
import type { PollenWorks } from '../../genetics/tray/pollen.ts';
import { courseText } from '../../text/tray.ts';

/** So many sorts of seedling are named by their S alleles. */
const MOST_SORTS = 6;

function pollenWords({ share, grains, set, seedlings, takeOwn, linked }: PollenWorks): string {
  const sorts = seedlings.slice(0, MOST_SORTS);
  return [
    courseText.pollenWorks(share, grains, set),
    ...(sorts.length > 0 ? [courseText.sSeedlings(sorts, seedlings.length - sorts.length), courseText.sOwn(takeOwn)] : []),
    ...(linked.length > 0 ? [courseText.sLinked(linked)] : []),
  ].join(' ');
}

/** What becomes of the seed: first fruit, weak ones, empty fruit, strays. */
export function courseList(
  { entry, kind, seasons, pollinated, toGermination, never, weak, emptyFruit, emptyIfShown, stray, pollen, selfSterile, fate, diesAt }: Course,
  mother: string,
): TemplateResult {
  const three = [seasons.earliest, seasons.half, seasons.ninety] as const;
  const [earliest, half, ninety] = three.map((season) => pollinated + toGermination + season);
  const item = (term: string, words: string) =>
    html`<dt>${term}</dt>
      <dd>${words}</dd>`;
  const empty = [emptyFruit > 0 ? courseText.emptyFruit(emptyFruit) : '', ...emptyIfShown.map(({ share, trait }) => courseText.emptyIfShown(share, trait))]
    .filter(Boolean)
    .join(' ');
  return html`<h3>${courseText.title}</h3>
    <p class="intro">${courseText.entry(entry.name)}</p>
    <dl>
      ${item(courseText.fruit, [courseText.seasons(pollinated, [earliest ?? 0, half ?? 0, ninety ?? 0], three), never > 0 ? courseText.never(never) : ''].join(' ').trim())}
      ${pollen ? item(courseText.pollen, pollenWords(pollen)) : nothing}
      ${weak && weak.share > 0 ? item(courseText.weak, courseText.weakness(weak.share, weak.onset, weak.course, weak.inRoots)) : nothing}
      ${empty === '' ? nothing : item(courseText.empty, empty)} ${stray > 0 ? item(courseText.stray, courseText.strays(stray)) : nothing}
      ${selfSterile ? item(courseText.selfed, courseText.selfSterile(kind.name)) : nothing}
      ${fate.copy > 0 ? item(courseText.copies, courseText.copy(fate.copy, mother)) : nothing}
      ${fate.male > 0 ? item(courseText.males, courseText.male(fate.male)) : nothing}
      ${fate.dies > 0 ? item(courseText.dying, courseText.dies(fate.dies, diesAt ?? 0)) : nothing}
      ${fate.useless > 0 ? item(courseText.odd, courseText.useless(fate.useless)) : nothing}
    </dl>`;
}
