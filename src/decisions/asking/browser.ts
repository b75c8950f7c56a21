import type { AskingThread } from './asking.ts';
import type { FromAsker } from './protocol.ts';

/** A thread of the browser that thinks about questions. */
export function browserAsking(threads: number): AskingThread {
  const worker = new Worker(new URL('./asking-host.ts', import.meta.url), { type: 'module' });
  worker.postMessage(threads);
  return {
    post: (message, transfer) => worker.postMessage(message, transfer as Transferable[]),
    listen(heard, broken) {
      worker.onmessage = ({ data }: MessageEvent<FromAsker>) => heard(data);
      worker.onerror = (event) => {
        event.preventDefault();
        broken(new Error(event.message));
      };
    },
    end: () => worker.terminate(),
  };
}
