import type { Reply } from './protocol.ts';
import { poolRunner, type Runner, type Thread } from './runner.ts';

function browserThread(): Thread {
  const worker = new Worker(new URL('./browser-host.ts', import.meta.url), { type: 'module' });
  return {
    post: (request) => worker.postMessage(request),
    listen(reply, broken) {
      worker.onmessage = (event: MessageEvent<Reply>) => reply(event.data);
      worker.onerror = (event) => {
        event.preventDefault();
        broken(new Error(event.message));
      };
    },
    end: () => worker.terminate(),
  };
}

/** All cores of the visitor's machine, the page itself kept free. */
export function browserRunner(threads = Math.max(1, Math.min(16, navigator.hardwareConcurrency))): Runner {
  return poolRunner(browserThread, threads);
}
