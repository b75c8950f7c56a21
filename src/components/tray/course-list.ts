import { html, nothing, type TemplateResult } from 'lit';
import type { Course } from '../../genetics/tray/course.ts';
import { courseText } from '../../text/tray.ts';

/** What becomes of the seed: first fruit, weak ones, empty fruit, strays. */
export function courseList({
  entry,
  kind,
  seasons,
  pollinated,
  toGermination,
  never,
  weak,
  emptyFruit,
  emptyIfShown,
  stray,
  selfSterile,
}: Course): TemplateResult {
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
      ${weak && weak.share > 0 ? item(courseText.weak, courseText.weakness(weak.share, weak.onset, weak.course, weak.inRoots)) : nothing}
      ${empty === '' ? nothing : item(courseText.empty, empty)} ${stray > 0 ? item(courseText.stray, courseText.strays(stray)) : nothing}
      ${selfSterile ? item(courseText.selfed, courseText.selfSterile(kind.name)) : nothing}
    </dl>`;
}
