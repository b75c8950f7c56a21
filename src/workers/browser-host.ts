/// <reference lib="webworker" />
import { host } from './host.ts';
import type { Request } from './protocol.ts';

declare const self: DedicatedWorkerGlobalScope;

const answer = host();
self.onmessage = (event: MessageEvent<Request>) => {
  const result = answer(event.data);
  if (result) self.postMessage(result.reply, result.transfer as Transferable[]);
};
