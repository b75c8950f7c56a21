/// <reference lib="webworker" />
import type { ToAsker } from './protocol.ts';
import { askingHost } from './host.ts';

declare const self: DedicatedWorkerGlobalScope;

// The first message says how many threads futures are run on; then questions come.
self.onmessage = ({ data: threads }: MessageEvent<number>) => {
  const hear = askingHost((message) => self.postMessage(message), threads);
  self.onmessage = ({ data }: MessageEvent<ToAsker>) => hear(data);
};
