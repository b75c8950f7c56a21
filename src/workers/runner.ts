import type { FactMix } from '../engine/fact-mix.ts';
import { NOTHING, type WhatIf } from '../engine/what-if.ts';
import type { Programme } from '../model/programme.ts';
import type { Diary } from '../results/diary.ts';
import { Columns } from '../results/columns.ts';
import type { Reply, Request } from './protocol.ts';

/** A thread that answers requests in order. */
export interface Thread {
  post(request: Request): void;
  /** Called with each reply; a thread that breaks reports through `broken`. */
  listen(reply: (reply: Reply) => void, broken: (error: Error) => void): void;
  end(): void;
}

/** Runs futures of one programme somewhere. All runners give the same bytes. */
export interface Runner {
  readonly threads: number;
  /** Grows with every programme loaded. */
  readonly version: number;
  /** Replaces the programme; what is under way for the one before is given up. */
  load(programme: Programme): void;
  runs(plans: readonly number[], from: number, runs: number): Promise<Columns[]>;
  factSets(plans: readonly number[], from: number, sets: number, futures: number): Promise<Int32Array>;
  diary(plan: number, run: number): Promise<Diary>;
  /**
   * Futures of any programme, beside the loaded one and untouched by `load`. Runs when nothing of the loaded programme waits.
   * Rejects with GivenUp as soon as `ended` is aborted.
   * @param whatIf what happens for sure in all of them
   */
  variant(programme: Programme, plans: readonly number[], from: number, runs: number, ended?: AbortSignal, whatIf?: WhatIf): Promise<Columns[]>;
  /** Futures of mixed facts of any programme, as `variant` runs others. Returns what `Simulator.mixed` does. */
  mixed(programme: Programme, plans: readonly number[], mix: FactMix, ended?: AbortSignal): Promise<Int32Array>;
  end(): void;
}

/** A task was given up because a newer programme or a newer question came. */
export class GivenUp extends Error {
  override readonly name = 'GivenUp';
}

interface Task {
  readonly request: Exclude<Request, { type: 'load' }>;
  readonly done: (reply: Reply) => void;
  readonly failed: (error: Error) => void;
  /** Who asked for a variant may stop waiting for it. */
  readonly ended?: AbortSignal | undefined;
}

/** A thread that breaks so often in a row is given up. */
const MOST_BREAKS = 3;

interface Slot {
  thread: Thread;
  /** Times it has broken since its last answer. */
  broken: number;
  task: Task | null;
  loaded: number;
}

/** Asked of a programme that comes along, whatever is loaded. */
const isVariant = (request: Task['request']) => request.type === 'variant' || request.type === 'mixed';

/** The slot’s short task is finished by its thread; its answer no longer belongs to anyone. */
function disown(slot: Slot): void {
  if (slot.task) slot.task = { request: slot.task.request, done: () => undefined, failed: () => undefined };
}

/**
 * Spreads tasks over threads. Results belong to tasks, never to threads or to the order of arrival. A new programme drops waiting
 * tasks at once and ignores what running ones still answer; tasks are kept short by the caller, so no thread need be killed.
 * Variants share the threads but come last: a question never holds up the loaded programme by more than one short task a thread.
 */
export function poolRunner(makeThread: () => Thread, threads: number): Runner {
  const waiting: Task[] = [];
  const variants: Task[] = [];
  const numbers = new WeakMap<Programme, WeakMap<WhatIf, number>>();
  const watched = new WeakSet<AbortSignal>();
  let lastNumber = 0;
  let programme: Programme | null = null;
  let version = 0;
  let nextId = 1;

  const serve = (slot: Slot) => {
    slot.thread.listen(
      (reply) => {
        const { task } = slot;
        if (!task || reply.id !== task.request.id) return;
        slot.task = null;
        slot.broken = 0;
        if (reply.type === 'failed') task.failed(Object.assign(new Error(reply.message), { name: reply.name, stack: reply.stack }));
        else task.done(reply);
        feed(slot);
      },
      (error) => {
        const { task } = slot;
        slot.thread.end();
        slot.task = null;
        slot.loaded = 0;
        slot.broken += 1;
        task?.failed(error);
        if (slot.broken > MOST_BREAKS) {
          // A thread that never gets going is not tried for ever; without any thread nothing waiting can be done.
          if (slots.every(({ broken }) => broken > MOST_BREAKS)) for (const left of [...waiting.splice(0), ...variants.splice(0)]) left.failed(error);
          return;
        }
        slot.thread = makeThread();
        serve(slot);
        feed(slot);
      },
    );
  };
  const feed = (slot: Slot) => {
    if (slot.task || slot.broken > MOST_BREAKS) return;
    const task = (programme ? waiting.shift() : undefined) ?? variants.shift();
    if (!task) return;
    if (programme && !isVariant(task.request) && slot.loaded !== version) {
      slot.thread.post({ type: 'load', programme });
      slot.loaded = version;
    }
    slot.task = task;
    slot.thread.post(task.request);
  };
  const slots = Array.from({ length: threads }, (): Slot => ({ thread: makeThread(), broken: 0, task: null, loaded: 0 }));
  slots.forEach(serve);
  const enqueue = (queue: Task[], task: Task) => {
    if (slots.every(({ broken }) => broken > MOST_BREAKS)) {
      task.failed(new Error('No thread could be started.'));
      return;
    }
    queue.push(task);
    slots.forEach(feed);
  };
  const ask = (request: (id: number) => Task['request']) =>
    new Promise<Reply>((done, failed) => enqueue(waiting, { request: request(nextId++), done, failed }));
  const numberOf = (of: Programme, whatIf: WhatIf) => {
    const mine = numbers.get(of) ?? new WeakMap<WhatIf, number>();
    numbers.set(of, mine);
    const number = mine.get(whatIf) ?? ++lastNumber;
    mine.set(whatIf, number);
    return number;
  };
  /** Asks something of a programme of its own, for as long as the question is asked. */
  const askOf = async (of: Programme, whatIf: WhatIf, request: (variant: number, id: number) => Task['request'], ended: AbortSignal | undefined) => {
    if (ended?.aborted === true) throw new GivenUp('The question is no longer asked.');
    if (ended) watch(ended);
    const variant = numberOf(of, whatIf);
    return new Promise<Reply>((done, failed) => enqueue(variants, { request: request(variant, nextId++), done, failed, ended }));
  };
  const endQuestion = (ended: AbortSignal) => {
    const stopped = new GivenUp('The question is no longer asked.');
    const left = variants.splice(0);
    for (const task of left) if (task.ended === ended) task.failed(stopped);
    variants.push(...left.filter((task) => task.ended !== ended));
    for (const slot of slots) {
      if (slot.task?.ended !== ended) continue;
      slot.task.failed(stopped);
      disown(slot);
    }
  };
  /** One listener a question, however many tasks it has. */
  const watch = (ended: AbortSignal) => {
    if (watched.has(ended)) return;
    watched.add(ended);
    ended.addEventListener('abort', () => endQuestion(ended), { once: true });
  };

  return {
    threads,
    get version() {
      return version;
    },
    load(next) {
      programme = next;
      version += 1;
      const stopped = new GivenUp('A newer programme came.');
      for (const task of waiting.splice(0)) task.failed(stopped);
      for (const slot of slots) {
        const { task } = slot;
        if (!task || isVariant(task.request)) continue;
        disown(slot);
        task.failed(stopped);
      }
    },
    runs: async (plans, from, runs) => columnsOf(await ask((id) => ({ type: 'runs', id, plans, from, runs }))),
    async factSets(plans, from, sets, futures) {
      const reply = await ask((id) => ({ type: 'factSets', id, plans, from, sets, futures }));
      if (reply.type !== 'factSets') throw new Error('The thread answered another question.');
      return reply.provenBy;
    },
    async diary(plan, run) {
      const reply = await ask((id) => ({ type: 'diary', id, plan, run }));
      if (reply.type !== 'diary') throw new Error('The thread answered another question.');
      return reply.diary;
    },
    variant: async (next, plans, from, runs, ended, whatIf = NOTHING) =>
      columnsOf(await askOf(next, whatIf, (variant, id) => ({ type: 'variant', id, programme: next, whatIf, variant, plans, from, runs }), ended)),
    async mixed(next, plans, mix, ended) {
      const reply = await askOf(next, NOTHING, (variant, id) => ({ type: 'mixed', id, programme: next, whatIf: NOTHING, variant, plans, mix }), ended);
      if (reply.type !== 'mixed') throw new Error('The thread answered another question.');
      return reply.yearProven;
    },
    end() {
      for (const slot of slots) slot.thread.end();
    },
  };
}

function columnsOf(reply: Reply): Columns[] {
  if (reply.type !== 'runs') throw new Error('The thread answered another question.');
  return reply.columns.map((part) => new Columns(part.shape, part.runs, part));
}
