import { host } from './host.ts';
import type { Reply } from './protocol.ts';
import type { Thread } from './runner.ts';

/** On the calling thread. With `serialise`, every message is copied as between threads: finds what cannot cross. */
export function inlineThread(serialise = false): Thread {
  const answer = host();
  let onReply: (reply: Reply) => void = () => undefined;
  return {
    post(request) {
      const result = answer(serialise ? structuredClone(request) : request);
      if (result) queueMicrotask(() => onReply(serialise ? structuredClone(result.reply) : result.reply));
    },
    listen(reply) {
      onReply = reply;
    },
    end() {
      onReply = () => undefined;
    },
  };
}
