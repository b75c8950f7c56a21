import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { LearnedInheritance, Loser } from '../../seasonlog/inheritance.ts';
import { losersText as words } from '../../text/log-lessons.ts';
import { placeWords } from '../../text/log.ts';
import { saveRow } from '../charts/data-table.ts';
import type { ShownChance } from '../inheritance/chances-picture.ts';
import '../inheritance/chances-picture.ts';
import { LessonElement } from '../learned/lesson-element.ts';
import { pieces } from '../pages/parts.ts';

/** Trees of one family that were seen alike have one chance. */
function groupsOf(losers: readonly Loser[]): Loser[][] {
  const groups = new Map<string, Loser[]>();
  for (const loser of losers) {
    const key = `${loser.batch} ${String(loser.showed)} ${String(loser.seasons)}`;
    groups.set(key, [...(groups.get(key) ?? []), loser]);
  }
  return [...groups.values()];
}

function rowOf(group: readonly Loser[]): ShownChance[] {
  const [first] = group;
  if (!first) return [];
  const { batch, batchName, showed, seasons, carries } = first;
  const seen = words.seen(showed, seasons);
  const name = `${batchName}, ${seen}`;
  return [
    {
      id: `${batch} ${String(showed)} ${String(seasons)}`,
      name: batchName,
      note: words.note(group.length, seen),
      before: null,
      after: carries,
      strong: words.chance(carries),
      plain: '',
      words: words.place(name, group.length, carries),
      cells: [name, String(group.length), words.chance(carries)],
    },
  ];
}

/** Trees listed before one asks for all. */
const FIRST = 12;

/** Trees that did not show a trait and may carry it: which, where they stand, and with what chance. */
@customElement('oo-losers')
export class LosersPart extends LessonElement {
  @state() private all: ReadonlySet<string> = new Set();

  protected override render(): TemplateResult {
    const known = this.said.lessons?.inheritance.filter(({ losers }) => losers.length > 0) ?? [];
    return html`${known.map((one) => this.trait(one))}`;
  }

  private trait({ trait, name, losers }: LearnedInheritance): TemplateResult {
    const groups = groupsOf(losers);
    const best = losers[0]?.carries ?? 0;
    const near = losers.filter(({ carries }) => Math.round(carries * 10) === Math.round(best * 10)).length;
    const shown = this.all.has(trait) ? losers : losers.slice(0, FIRST);
    return html`<section aria-label=${`${words.title}: ${name}`}>
      <h2>${words.title}</h2>
      <p class="finding">${pieces(words.finding(losers.length, near, best, name))}</p>
      <p class="quiet intro">${words.intro}</p>
      <oo-chances-picture
        .answer=${groups.flatMap(rowOf)}
        .heads=${words.groupHeads}
        reads=${words.slider}
        summary=${words.summary(name)}
        ?stale=${this.overtaken}
      ></oo-chances-picture>
      <h3>${words.list}</h3>
      <div class="scroll" tabindex="0" role="group" aria-label=${words.list}>
        <table>
          <thead>
            <tr>
              ${words.heads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${shown.map((one) => this.tree(one))}
          </tbody>
        </table>
      </div>
      ${saveRow({})}
      ${
        shown.length === losers.length
          ? nothing
          : html`<div class="buttons">
              <button type="button" @click=${() => (this.all = new Set([...this.all, trait]))}>${words.more(losers.length - shown.length)}</button>
            </div>`
      }
    </section>`;
  }

  private tree({ tag, place, batchName, seasons, status, carries }: Loser): TemplateResult {
    const stands = [placeWords(place) === '' ? words.nowhere : placeWords(place), words.status[status]].filter((part) => part !== '').join('; ');
    return html`<tr>
      <th scope="row">${tag}</th>
      <td>${stands}</td>
      <td>${batchName}</td>
      <td>${String(seasons)}</td>
      <td>${words.chance(carries)}</td>
    </tr>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-losers': LosersPart;
  }
}
