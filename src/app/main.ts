import example from '../../sims/examples/red-pear.json';
import { z } from 'zod';
import { App } from '../components/app/app.ts';
import type { Programme } from '../model/programme.ts';
import { parseProgramme } from '../model/read.ts';
import { sentence } from '../model/problem.ts';
import { ProgrammeStore } from '../state/programme-store.ts';
import { RunsStore } from '../state/runs-store.ts';
import { Device } from '../storage/device.ts';
import { dressPage } from '../styles/page.ts';
import { app as words } from '../text/app.ts';
import { browserRunner } from '../workers/browser.ts';

// Zod's fast path builds functions from text, which strict pages forbid; ours are parsed rarely.
z.config({ jitless: true });

/** Composition root: the only place where stores, storage, workers and screen meet. */
async function start(): Promise<void> {
  dressPage(document);
  const shipped = parseProgramme(example);
  if (!shipped.ok) throw new Error(shipped.problems.map((problem) => sentence(example, problem)).join(' '));
  const device = new Device();
  const kept = await device.load();
  const programme = kept?.ok === true ? kept.programme : (kept?.draft ?? shipped.programme);
  const programmes = new ProgrammeStore(programme, kept === null ? [] : kept.ok ? kept.notes : kept.draft ? kept.problems : [], shipped.programme);
  const runs = new RunsStore(browserRunner());

  const page = new App();
  page.programmes = programmes;
  page.runs = runs;
  if (kept?.ok === false && !kept.draft) page.notice = [words.unreadable, ...kept.problems.slice(0, 3).map((problem) => sentence(null, problem))];
  document.body.append(page);

  let timer = 0;
  let unsaved: Programme | null = null;
  const save = async (): Promise<void> => {
    clearTimeout(timer);
    if (!unsaved) return;
    const edited = unsaved;
    unsaved = null;
    const result = await device.save(edited);
    page.saved = result.ok
      ? { text: words.savedAt(new Date().toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })), bad: false }
      : { text: words.notSaved(result.reason), bad: true };
  };
  programmes.subscribe(({ programme: edited, runnable }) => {
    void runs.update(runnable);
    page.saved = { text: words.saving, bad: false };
    unsaved = edited;
    clearTimeout(timer);
    timer = window.setTimeout(() => void save(), 250);
  });
  // Whoever leaves or hides the page right after an edit keeps it too.
  window.addEventListener('pagehide', () => void save());
  document.addEventListener('visibilitychange', () => void save());
  void runs.update(programmes.state.runnable);
}

void start();
