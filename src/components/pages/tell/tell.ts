import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { FIRST_CHOICES, type Choices } from '../../../handout/choices.ts';
import { handoutOf, type Handout } from '../../../handout/handout.ts';
import { leaveOut } from '../../../handout/leave-out.ts';
import { sheetFile } from '../../../handout/sheet.ts';
import { wantedSentence } from '../../../handout/wanted.ts';
import type { Programme } from '../../../model/programme.ts';
import type { Outlook } from '../../../results/outlook.ts';
import { outlookOf } from '../../../state/outlook.ts';
import { fileName } from '../../../storage/file.ts';
import { shared } from '../../../styles/shared.ts';
import { likely } from '../../../text/app.ts';
import { longDate, oftenWords, timelineText } from '../../../text/handout.ts';
import { howOften } from '../../../text/sentences.ts';
import { tell } from '../../../text/tell.ts';
import { saveAsFile } from '../../files.ts';
import { pictureBlob, pictureFile } from '../../pictures-out.ts';
import { reachOf } from '../../share/reach.ts';
import { StoreElement } from '../../store-element.ts';
import '../../tell/card.ts';
import '../../tell/figures.ts';
import '../../tell/sealed.ts';
import { storyFragment } from '../../tell/story-link.ts';
import '../../tell/story-share.ts';
import '../../tell/sheet.ts';
import type { OoSheet } from '../../tell/sheet.ts';
import { pageStyles } from '../page.styles.ts';
import { care, pieces, problemList, progress } from '../parts.ts';
import { choicesForm } from './choices.ts';
import { tellStyles } from './tell.styles.ts';

/** Choices of this visit: leaving the page and coming back does not lose them; ids of plans that another programme has not say nothing there. */
let kept: Choices = FIRST_CHOICES;

/** The calendar day on this device, year-month-day. */
function todayHere(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** “What do I tell others?”: the sheet to print or send, a link that tells it as a story, and a forecast to seal. */
@customElement('oo-tell')
export class Tell extends StoreElement {
  static override styles = [...shared, pageStyles, tellStyles];

  /** Calendar day, year-month-day. */
  @property() today = todayHere();

  @state() private choices = kept;
  @state() private said = '';
  /** Address of the story of what is told now; null until it is made. */
  @state() private link: string | null = null;
  @query('oo-sheet') private readonly sheet!: OoSheet | null;
  private linked: { readonly programme: Programme; readonly leave: Choices['leaveOut'] } | null = null;

  private readonly change = (next: Choices): void => {
    this.choices = next;
    kept = next;
    this.said = '';
  };

  /** Makes the link anew when what it holds has changed. A page from a file has no address that others could use. */
  private follow(programme: Programme): void {
    const leave = this.choices.leaveOut;
    if (this.linked?.programme === programme && this.linked.leave === leave) return;
    this.linked = { programme, leave };
    this.link = null;
    if (reachOf(location) === 'file') return;
    storyFragment(programme, leave).then(
      (fragment) => {
        if (this.linked?.programme === programme && this.linked.leave === leave) this.link = `${location.href.replace(/#.*$/s, '')}${fragment}`;
      },
      () => undefined,
    );
  }

  protected override render(): TemplateResult {
    const { programme, problems, runnable } = this.programmes.state;
    const outlook = outlookOf(runnable, this.runs.state);
    const { stale, done, wanted, phase } = this.runs.state;
    const ready = outlook !== null && stale.size === 0 && done >= wanted && phase === 'rest' && runnable === programme;
    this.follow(runnable);
    const file = fileName(leaveOut(runnable, this.choices.leaveOut));
    const handout = outlook && handoutOf(runnable, outlook, this.choices, { date: this.today, link: reachOf(location) === 'all' ? this.link : null }, file);
    return html`
      ${handout ? this.answer(handout) : html`<h1>${likely.waiting}</h1>`} ${progress(this.runs.state)} ${problemList(programme, problems)}
      <section class="part" aria-labelledby="choices-title">
        <h2 id="choices-title">${tell.choices}</h2>
        ${choicesForm(runnable, this.choices, wantedSentence(leaveOut(runnable, this.choices.leaveOut)), this.change)}
      </section>
      ${handout ? this.sheetPart(handout, outlook, ready, file) : nothing}
      <section class="part">
        <oo-story-share .link=${this.link}></oo-story-share>
      </section>
      <section class="part">
        <oo-sealed .programme=${runnable} .outlook=${ready ? outlook : null} .today=${this.today}></oo-sealed>
      </section>
      <section class="part"><oo-card .today=${this.today} .lead=${handout?.lead.mark ?? ''}></oo-card></section>
      <section class="part"><oo-figures .outlook=${ready ? outlook : null} .today=${this.today}></oo-figures></section>
      ${care(programme, this.runs.engine)}
    `;
  }

  private answer({ lead, lastYear, futures, asks }: Handout): TemplateResult {
    const nothingOf100 = 100 - (futures[0]?.count ?? 0);
    return html`<h1>${pieces(tell.headline(lead.mark, oftenWords(howOften(lead.chance)), lastYear, nothingOf100, asks.length))}</h1>
      <p class="lede">${tell.lede}</p>`;
  }

  private sheetPart(handout: Handout, outlook: Outlook, ready: boolean, file: string): TemplateResult {
    const name = file.replace(/\.json$/, '');
    return html`<section class="part sheet-part" aria-labelledby="sheet-title">
      <div class="sheet-head">
        <h2 id="sheet-title">${tell.sheet}</h2>
        <div class="buttons">
          <button type="button" class="main" ?disabled=${!ready} @click=${() => window.print()}>${tell.print}</button>
          <button type="button" ?disabled=${!ready} @click=${() => void this.saveFile(handout, `${name}.html`)}>${tell.file}</button>
          <button type="button" ?disabled=${!ready} @click=${() => void this.savePicture(outlook, handout, `${name}.svg`)}>${tell.svg}</button>
          <button type="button" ?disabled=${!ready} @click=${() => void this.savePicture(outlook, handout, `${name}.png`)}>${tell.png}</button>
        </div>
      </div>
      <p class="about">${tell.which}</p>
      <p class="said quiet" role="status">${ready ? this.said : tell.waiting}</p>
      <oo-sheet .handout=${handout}></oo-sheet>
    </section>`;
  }

  private async hand(name: string, make: () => Promise<readonly [string | Blob, string]>): Promise<void> {
    try {
      const [content, type] = await make();
      saveAsFile(name, content, type);
      this.said = tell.saved(name);
    } catch {
      this.said = tell.failed;
    }
  }

  private saveFile(handout: Handout, name: string): Promise<void> {
    return this.hand(name, async () => {
      const { FONTS } = await import('../../../handout/fonts.ts');
      return [sheetFile(handout, FONTS), 'text/html'];
    });
  }

  private savePicture({ word, engine, runs }: Outlook, { title }: Handout, name: string): Promise<void> {
    return this.hand(name, async () => {
      const drawn = this.sheet?.picture;
      if (!drawn) throw new Error('There is no picture.');
      const { FONTS } = await import('../../../handout/fonts.ts');
      const source = tell.pictureSource(word, engine, runs, longDate(this.today));
      const picture = pictureFile(drawn, { title: `${title}: ${timelineText.title}`, source }, FONTS);
      return name.endsWith('.svg') ? [picture.svg, 'image/svg+xml'] : [await pictureBlob(picture), 'image/png'];
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-tell': Tell;
  }
}
