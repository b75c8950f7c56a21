/// <reference lib="webworker" />
import { answerLearner } from './inline.ts';
import type { ToLearner } from './protocol.ts';

declare const self: DedicatedWorkerGlobalScope;

self.onmessage = ({ data }: MessageEvent<ToLearner>) => self.postMessage(answerLearner(data));
