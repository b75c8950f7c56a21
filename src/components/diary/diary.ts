import { consume } from '@lit/context';
import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Columns } from '../../results/columns.ts';
import type { Diary } from '../../results/diary.ts';
import type { Outlook } from '../../results/outlook.ts';
import type { RunsStore } from '../../state/runs-store.ts';
import { tellingFutures, type TellingFutures } from '../../statistics/telling.ts';
import { shared } from '../../styles/shared.ts';
import { chartStyles } from '../../styles/charts.ts';
import { diaryRows, diaryTable, diaryText, entries, hiddenFacts } from '../../text/diary.ts';
import { dataTable } from '../charts/data-table.ts';
import { runsContext } from '../contexts.ts';

const styles = css`
  :host {
    display: block;
  }
  .choices {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 8px 22px;
    margin: 14px 0;
  }
  label,
  legend {
    color: var(--ink2);
    padding: 0;
  }
  label {
    display: grid;
    grid-template-columns: minmax(0, auto);
    max-width: 100%;
    gap: 4px;
  }
  fieldset {
    border: 0;
    margin: 0;
    padding: 0;
  }
  .segments {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin-top: 4px;
  }
  .segments button[aria-pressed='true'] {
    background: var(--ink);
    color: var(--paper);
    border-color: var(--ink);
  }
  dl {
    display: grid;
    grid-template-columns: 5em minmax(0, 1fr);
    gap: 6px 14px;
    margin: 14px 0 0;
    max-width: 60em;
  }
  dt {
    font-weight: 650;
    font-variant-numeric: tabular-nums lining-nums;
  }
  dd {
    margin: 0;
  }
  dd p + p {
    margin-top: 2px;
  }
  .paper-only {
    display: none;
  }
  @media print {
    .choices {
      display: none;
    }
    .paper-only {
      display: block;
      font-weight: 650;
      margin-top: 8px;
    }
    dt,
    dd,
    tr {
      break-inside: avoid;
    }
    details.data th,
    details.data td {
      padding: 3px 8px 3px 0;
      overflow-wrap: anywhere;
    }
    .scroll {
      overflow: visible;
    }
    dl {
      gap: 2px 14px;
      margin-top: 8px;
    }
  }
  @media (max-width: 700px) {
    dl {
      grid-template-columns: 3.4em minmax(0, 1fr);
    }
  }
`;

/** A good, a middling and a bad future of a plan, told year by year. */
@customElement('oo-diary')
export class DiaryElement extends LitElement {
  static override styles = [...shared, ...chartStyles, styles];

  @consume({ context: runsContext, subscribe: true })
  @state()
  private runs!: RunsStore;

  @property({ attribute: false }) outlook: Outlook | null = null;
  /** Columns of the plans, in the order of the outlook’s. */
  @property({ attribute: false }) columns: readonly Columns[] = [];

  @state() private plan = '';
  @state() private which: keyof TellingFutures = 'good';
  @state() private told: { readonly key: string; readonly diary: Diary } | null = null;

  private get chosen() {
    const plans = this.outlook?.plans ?? [];
    const at = Math.max(
      0,
      plans.findIndex(({ id }) => id === this.plan),
    );
    const plan = plans[at];
    const columns = this.columns[at];
    return plan && columns ? { plan, columns, run: tellingFutures(columns)[this.which] } : null;
  }

  protected override updated(_changed: PropertyValues): void {
    const { chosen } = this;
    if (!chosen) return;
    const key = `${chosen.plan.id}/${String(chosen.run)}/${String(chosen.columns.runs)}/${String(chosen.columns.amounts[chosen.run] ?? 0)}`;
    if (this.told?.key === key) return;
    void this.runs.diary(chosen.plan.id, chosen.run).then((diary) => {
      if (diary) this.told = { key, diary };
    });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { outlook, chosen, told } = this;
    if (!outlook || !chosen) return nothing;
    const names = chosen.plan.generations.map(({ name }) => name);
    const hidden = told ? hiddenFacts(told.diary) : [];
    return html`<section aria-labelledby="title">
      <h2 id="title">${diaryText.title}</h2>
      <p class="quiet">${diaryText.intro}</p>
      <div class="choices">
        <label
          >${diaryText.plan}
          <select @change=${this.choosePlan}>
            ${outlook.plans.map(({ id, mark, name }) => html`<option value=${id} ?selected=${id === chosen.plan.id}>${mark} ${name}</option>`)}
          </select></label
        >
        <fieldset>
          <legend>${diaryText.which}</legend>
          <div class="segments">
            ${(['good', 'middling', 'bad'] as const).map((which) => html`<button aria-pressed=${which === this.which ? 'true' : 'false'} @click=${() => (this.which = which)}>${diaryText[which]}</button>`)}
          </div>
        </fieldset>
      </div>
      ${
        told
          ? html`<p class="paper-only">${diaryTable.told(chosen.plan.mark, chosen.plan.name, diaryText[this.which])}</p>
              <p>${diaryText.number(told.diary.run, chosen.columns.runs)} ${hidden.length > 0 ? diaryText.known(hidden) : nothing}</p>
              <dl>
                ${told.diary.years.map(
                  (year) =>
                    html`<dt>${String(year.year)}</dt>
                      <dd>${entries(year, names).map((line) => html`<p>${line}</p>`)}</dd>`,
                )}
              </dl>
              ${dataTable(diaryAsTable(told.diary, names))}`
          : html`<p class="quiet">${diaryText.waiting}</p>`
      }
    </section>`;
  }

  private readonly choosePlan = (event: Event): void => {
    if (event.target instanceof HTMLSelectElement) this.plan = event.target.value;
  };
}

function diaryAsTable(diary: Diary, names: readonly string[]): TemplateResult {
  const { counts, rows } = diaryRows(diary, names);
  return html`<table>
    <thead>
      <tr>
        <th scope="col">${diaryTable.year}</th>
        <th scope="col">${diaryTable.generation}</th>
        <th scope="col">${diaryTable.happened}</th>
        ${counts.map((count) => html`<th scope="col">${diaryTable.counts[count]}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) =>
          html`<tr>
            <th scope="row">${String(row.year)}</th>
            <td>${row.generation}</td>
            <td>${row.happened}</td>
            ${counts.map((_, index) => html`<td>${row.counts[index] ? diaryTable.count(row.counts[index]) : ''}</td>`)}
          </tr>`,
      )}
    </tbody>
  </table>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-diary': DiaryElement;
  }
}
