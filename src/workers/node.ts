import { parentPort, Worker } from 'node:worker_threads';
import { host } from './host.ts';
import type { Reply, Request } from './protocol.ts';
import { poolRunner, type Runner, type Thread } from './runner.ts';

function nodeThread(program: URL): Thread {
  const worker = new Worker(program);
  return {
    post: (request) => worker.postMessage(request),
    listen(reply, broken) {
      worker.removeAllListeners();
      worker.on('message', (message: Reply) => reply(message));
      worker.on('error', broken);
    },
    end: () => void worker.terminate(),
  };
}

/** @param program the built file that calls `serveNode` when it is not the main thread */
export function nodeRunner(program: URL, threads: number): Runner {
  return poolRunner(() => nodeThread(program), threads);
}

/** Answers requests inside a worker thread. */
export function serveNode(): void {
  const answer = host();
  parentPort?.on('message', (request: Request) => {
    const result = answer(request);
    if (result) parentPort?.postMessage(result.reply, result.transfer as ArrayBuffer[]);
  });
}
