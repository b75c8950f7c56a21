/** The benchmark, started by launch.mjs. Its built file is also the program of its worker threads. */
import { isMainThread } from 'node:worker_threads';
import { serveNode } from '../src/workers/node.ts';
import { main } from './bench/main.ts';

if (isMainThread) process.exitCode = await main(process.argv.slice(2), new URL(import.meta.url));
else serveNode();
