import type { AskingThread } from './asking.ts';
import { askingHost } from './host.ts';
import type { FromAsker } from './protocol.ts';

/** Thinks on the calling thread, every message copied as between threads: for tests and for places without threads. */
export function inlineAsking(threads: number): AskingThread {
  let heard: (message: FromAsker) => void = () => undefined;
  const host = askingHost((message) => queueMicrotask(() => heard(structuredClone(message))), threads);
  return {
    post: (message) => host(structuredClone(message)),
    listen(hear) {
      heard = hear;
    },
    end() {
      heard = () => undefined;
    },
  };
}
