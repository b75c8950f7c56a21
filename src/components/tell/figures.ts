import { consume } from '@lit/context';
import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Outlook } from '../../results/outlook.ts';
import { analysisDocument, answersDocument, documentJson, type AnswerEntry, type Origin } from '../../results/writers/analysis.ts';
import { runsCsv } from '../../results/writers/runs-csv.ts';
import { frameOf } from '../../engine/frame.ts';
import type { AnswersStore } from '../../state/answers-store.ts';
import { slug } from '../../storage/file.ts';
import { shared } from '../../styles/shared.ts';
import { figures } from '../../text/exports.ts';
import { answersContext } from '../contexts.ts';
import { saveAsFile } from '../files.ts';
import { StoreController } from '../store-controller.ts';
import { StoreElement } from '../store-element.ts';

const styles = css`
  :host {
    display: block;
  }
  .about,
  dd {
    color: var(--ink2);
    max-width: 47em;
  }
  .about {
    margin-top: 4px;
  }
  dl {
    display: grid;
    grid-template-columns: minmax(0, max-content) minmax(0, 1fr);
    align-items: center;
    gap: 14px 22px;
    margin: 14px 0 0;
  }
  dt button {
    width: 100%;
  }
  dd {
    margin: 0;
  }
  .said {
    min-height: 1.5em;
    margin-top: 8px;
  }
  @media (max-width: 700px) {
    dl {
      grid-template-columns: minmax(0, 1fr);
      gap: 4px;
    }
    dd + dt {
      margin-top: 14px;
    }
  }
  @media print {
    :host {
      display: none;
    }
  }
`;

/** As much work as is done in one go before the page may breathe, ms. */
const A_BREATH = 25;
const breathe = () => new Promise((resolve) => setTimeout(resolve));

/** Pieces of a file, gathered without holding up the page. */
export async function gathered(pieces: Iterable<string>): Promise<Blob> {
  const parts: Blob[] = [];
  let lines: string[] = [];
  let since = performance.now();
  for (const piece of pieces) {
    lines.push(piece);
    if (performance.now() - since < A_BREATH) continue;
    parts.push(new Blob(lines));
    lines = [];
    await breathe();
    since = performance.now();
  }
  return new Blob([...parts, ...lines]);
}

/** Every future as CSV, the results as JSON with all they come from, and the answers that are there. */
@customElement('oo-figures')
export class Figures extends StoreElement {
  static override styles = [...shared, styles];

  @consume({ context: answersContext, subscribe: true })
  @state()
  private answers!: AnswersStore;

  /** Null until all futures are counted. */
  @property({ attribute: false }) outlook: Outlook | null = null;
  /** Calendar day, year-month-day. */
  @property() today = '';

  @state() private said = '';
  @state() private busy = false;

  constructor() {
    super();
    new StoreController(this, () => this.answers);
  }

  /** Answers to the document as it stands, in the order in which they were asked. */
  private get there(): readonly AnswerEntry[] {
    return [...this.answers.state].flatMap(([question, { answer, stale }]) => (answer === null || stale ? [] : [{ question, answer }]));
  }

  private get origin(): Origin {
    return { programme: this.programmes.state.runnable, engine: this.runs.engine, runs: this.runs.state.done, date: this.today };
  }

  protected override render(): TemplateResult {
    const { outlook, there } = this;
    const rows = this.runs.state.columns.reduce((sum, { runs }) => sum + runs, 0);
    const off = outlook === null || this.busy;
    const button = (words: string, disabled: boolean, make: () => Promise<void>) =>
      html`<dt><button ?disabled=${disabled} @click=${make}>${words}</button></dt>`;
    return html`<section aria-labelledby="title">
      <h2 id="title">${figures.title}</h2>
      <p class="about">${figures.lede}</p>
      <dl>
        ${button(figures.runs, off, () => this.save('futures.csv', 'text/csv;charset=utf-8', () => this.runsFile()))}
        <dd>${figures.runsAbout(rows)}</dd>
        ${button(figures.results, off, () => this.save('results.json', 'application/json', () => this.analysisFile()))}
        <dd>${figures.resultsAbout}</dd>
        ${button(figures.answers, there.length === 0 || this.busy, () => this.save('answers.json', 'application/json', () => this.answersFile()))}
        <dd>${there.length === 0 ? figures.noAnswers : figures.answersAbout(there.length)}</dd>
      </dl>
      <p class="said quiet" role="status">${outlook === null && there.length === 0 ? figures.waiting : this.said === '' ? nothing : this.said}</p>
    </section>`;
  }

  private runsFile(): Promise<Blob> {
    return gathered(runsCsv(frameOf(this.programmes.state.runnable), this.runs.state.columns));
  }

  private async analysisFile(): Promise<string> {
    if (!this.outlook) throw new Error('Nothing has been counted.');
    return documentJson(await analysisDocument(this.outlook, this.origin));
  }

  private async answersFile(): Promise<string> {
    return documentJson(await answersDocument(this.there, this.origin));
  }

  private async save(ending: string, type: string, make: () => Promise<string | Blob>): Promise<void> {
    const name = `${slug(this.programmes.state.runnable.title)}-${ending}`;
    this.busy = true;
    this.said = figures.making;
    try {
      saveAsFile(name, await make(), type);
      this.said = figures.saved(name);
    } catch {
      this.said = figures.failed;
    } finally {
      this.busy = false;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-figures': Figures;
  }
}
