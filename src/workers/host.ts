import { Simulator } from '../engine/simulate.ts';
import type { Reply, Request } from './protocol.ts';

/** Answers requests on one thread, the same for every kind of runner. Returns the reply and what may be handed over without copying. */
export function host(): (request: Request) => { reply: Reply; transfer: ArrayBufferLike[] } | null {
  let simulator: Simulator | null = null;
  return (request) => {
    if (request.type === 'load') {
      simulator = new Simulator(request.programme);
      return null;
    }
    const { id } = request;
    try {
      if (!simulator) throw new Error('No programme has been loaded.');
      if (request.type === 'runs') {
        const columns = simulator
          .runs(request.plans, request.from, request.runs)
          .map(({ shape, runs, ints, amounts, byYear }) => ({ shape, runs, ints, amounts, byYear }));
        return { reply: { type: 'runs', id, columns }, transfer: columns.flatMap(({ ints, amounts, byYear }) => [ints.buffer, amounts.buffer, byYear.buffer]) };
      }
      if (request.type === 'diary') return { reply: { type: 'diary', id, diary: simulator.diary(request.plan, request.run) }, transfer: [] };
      const provenBy = simulator.factSets(request.plans, request.from, request.sets, request.futures);
      return { reply: { type: 'factSets', id, provenBy }, transfer: [provenBy.buffer] };
    } catch (error) {
      const { name, message, stack } = error instanceof Error ? error : new Error(String(error));
      return { reply: { type: 'failed', id, name, message, stack: stack ?? '' }, transfer: [] };
    }
  };
}
