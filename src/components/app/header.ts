import { html, nothing, type TemplateResult } from 'lit';
import type { Step } from '../../state/history.ts';
import type { Keeping } from '../../state/keeping.ts';
import type { ProgrammeState } from '../../state/programme-store.ts';
import { app } from '../../text/app.ts';
import { keeping } from '../../text/library.ts';
import '../share/share.ts';

/** What the buttons of the header do. */
export interface HeaderActions {
  readonly skip: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly open: () => void;
  readonly save: () => void;
  /** On a narrow page files and questions stand behind a button. */
  readonly menu: () => void;
}

const clock = (time: number): string => new Date(time).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });

/** How the document stands to the device, in a few words. */
export function savedWords({ status, trouble, savedAt }: Keeping): string {
  if (status === 'unsaved' && trouble) {
    const { short } = keeping[trouble];
    return trouble === 'full' || trouble === 'closed' || trouble === 'silent' ? app.notSaved(short) : app.notSavedHead(short);
  }
  if (status === 'saving') return app.saving;
  if (status === 'kept') return savedAt === null ? app.saved : app.savedAt(clock(savedAt));
  return '';
}

/** Title, state of saving, undo and redo, files. A button that has nothing to do keeps the focus that it has. */
export function headerOf({ programme, undo, redo }: ProgrammeState, kept: Keeping, happened: string, menuOpen: boolean, act: HeaderActions): TemplateResult {
  // What is not saved comes before all else.
  const said = [kept.status === 'unsaved' ? '' : happened, savedWords(kept)].filter((words) => words !== '').join(' · ');
  const step = (words: string, named: (label: string) => string, last: Step | undefined, go: () => void) =>
    html`<button class="plain" aria-disabled=${last === undefined ? 'true' : 'false'} title=${last ? named(last.named) : ''} @click=${() => last && go()}>
      ${words}
    </button>`;
  return html`<header class=${menuOpen ? 'open' : ''}>
    <button class="skip" @click=${act.skip}>${app.skip}</button>
    <div class="title"><strong>${programme.title}</strong>${programme.example ? html`<span class="quiet">${app.example}</span>` : nothing}</div>
    <div class="tools">
      <span class="saved ${kept.status === 'unsaved' ? 'problem' : 'quiet'}" role="status">${said}</span>
      ${step(app.undo, app.undoThat, undo.at(-1), act.undo)} ${step(app.redo, app.redoThat, redo[0], act.redo)}
      <button class="menu" aria-expanded=${menuOpen ? 'true' : 'false'} aria-controls="files questions" @click=${act.menu}>${app.menu}</button>
      <div class="more" id="files">
        <button @click=${act.open}>${app.open}</button>
        <button @click=${act.save}>${app.save}</button>
        <oo-share ?tucked=${!menuOpen}></oo-share>
        <button @click=${() => window.print()}>${app.print}</button>
      </div>
    </div>
  </header>`;
}
