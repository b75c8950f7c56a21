import example from '../../sims/examples/red-pear.json';
import { z } from 'zod';
import { App } from '../components/app/app.ts';
import { servePictures } from '../components/charts/serve-pictures.ts';
import { Asking } from '../decisions/asking/asking.ts';
import { browserAsking } from '../decisions/asking/browser.ts';
import type { Programme } from '../model/programme.ts';
import { parseProgramme } from '../model/read.ts';
import { sentence } from '../model/problem.ts';
import { AnswersStore } from '../state/answers-store.ts';
import { Keeper } from '../state/keeper.ts';
import { Library } from '../state/library.ts';
import { browserLearning } from '../state/lessons/browser.ts';
import { Learner } from '../state/lessons/learner.ts';
import { LessonsStore } from '../state/lessons/lessons-store.ts';
import { ProgrammeStore } from '../state/programme-store.ts';
import { RunsStore } from '../state/runs-store.ts';
import { Device } from '../storage/device.ts';
import { Journal } from '../storage/journal.ts';
import { dressPage } from '../styles/page.ts';
import { offline } from '../text/offline.ts';
import { browserRunner } from '../workers/browser.ts';
import { workOffline } from './offline.ts';
import { alive, askToKeep, calendarDay, holdMark, isPromised, localShelf, newName, openChannel, remember, remembered, takeTab } from './this-page.ts';

// Zod's fast path builds functions from text, which strict pages forbid; ours are parsed rarely.
z.config({ jitless: true });

/** Composition root: the only place where stores, storage, workers and screen meet. */
async function start(): Promise<void> {
  dressPage(document);
  const shipped = parseProgramme(example);
  if (!shipped.ok) throw new Error(shipped.problems.map((problem) => sentence(example, problem)).join(' '));
  const programmes = new ProgrammeStore(shipped.programme);
  const runner = browserRunner();
  const runs = new RunsStore(runner);
  const answers = new AnswersStore(shipped.programme, new Asking(browserAsking, runner));
  const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));
  const lessons = new LessonsStore(shipped.programme, new Learner(browserLearning), pause);

  const writer = newName();
  holdMark(writer);
  const before = takeTab(writer);
  const channel = openChannel();
  const keeper = new Keeper(programmes, new Device(), new Journal(localShelf, writer), {
    now: () => Date.now(),
    newId: newName,
    pause,
    alive: async (other) => other !== before && (await alive(other)),
    announce: channel.say,
    remember,
  });
  const notice = await keeper.begin(remembered());
  channel.onHeard((id) => void keeper.heard(id));
  // The first edit that is saved shows that there is something to keep.
  keeper.subscribe(({ status, savedAt }) => void (status === 'kept' && savedAt !== null && askToKeep()));
  // A message may have been missed while the page slept; and what is not saved yet gets one more chance before it is left.
  document.addEventListener('visibilitychange', () => void (document.visibilityState === 'visible' ? keeper.check() : keeper.flush()));

  const page = new App();
  page.programmes = programmes;
  page.runs = runs;
  page.answers = answers;
  page.lessons = lessons;
  page.keeper = keeper;
  page.library = new Library(keeper, shipped, isPromised);
  page.notice = notice;
  document.body.append(page);
  servePictures(document, () => {
    const { title, shuffleWord } = programmes.state.runnable;
    return { title, word: shuffleWord, engine: runs.engine, futures: runs.state.done, date: calendarDay(new Date()) };
  });
  const follow = (runnable: Programme) => {
    void runs.update(runnable);
    answers.update(runnable);
    lessons.update(runnable);
  };
  programmes.subscribe(({ runnable }) => follow(runnable));
  follow(programmes.state.runnable);
  void workOffline({ ready: () => page.say(offline.ready), newer: (take) => (page.newer = take) }, () => Date.now());
}

void start();
