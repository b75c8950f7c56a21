import { Simulator } from '../engine/simulate.ts';
import type { Columns } from '../results/columns.ts';
import type { Reply, Request } from './protocol.ts';

/** Variants a thread keeps compiled: the chunks of one follow each other closely, and a compiled programme holds about 0.3 MB. */
const KEPT_VARIANTS = 8;

/** Answers requests on one thread, the same for every kind of runner. Returns the reply and what may be handed over without copying. */
export function host(): (request: Request) => { reply: Reply; transfer: ArrayBufferLike[] } | null {
  let simulator: Simulator | null = null;
  const variants = new Map<number, Simulator>();
  const variant = ({ variant: key, programme, whatIf }: Extract<Request, { type: 'variant' | 'mixed' }>): Simulator => {
    const found = variants.get(key) ?? new Simulator(programme, whatIf);
    // Last used stands last, so that the first is the one to go.
    variants.delete(key);
    variants.set(key, found);
    for (const oldest of variants.keys()) if (variants.size > KEPT_VARIANTS) variants.delete(oldest);
    return found;
  };
  return (request) => {
    if (request.type === 'load') {
      simulator = new Simulator(request.programme);
      return null;
    }
    const { id } = request;
    try {
      if (request.type === 'variant') return answered(id, variant(request).runs(request.plans, request.from, request.runs));
      if (request.type === 'mixed') {
        const yearProven = variant(request).mixed(request.plans, request.mix);
        return { reply: { type: 'mixed', id, yearProven }, transfer: [yearProven.buffer] };
      }
      if (!simulator) throw new Error('No programme has been loaded.');
      if (request.type === 'runs') return answered(id, simulator.runs(request.plans, request.from, request.runs));
      if (request.type === 'diary') return { reply: { type: 'diary', id, diary: simulator.diary(request.plan, request.run) }, transfer: [] };
      const provenBy = simulator.factSets(request.plans, request.from, request.sets, request.futures);
      return { reply: { type: 'factSets', id, provenBy }, transfer: [provenBy.buffer] };
    } catch (error) {
      const { name, message, stack } = error instanceof Error ? error : new Error(String(error));
      return { reply: { type: 'failed', id, name, message, stack: stack ?? '' }, transfer: [] };
    }
  };
}

function answered(id: number, results: readonly Columns[]): { reply: Reply; transfer: ArrayBufferLike[] } {
  const columns = results.map(({ shape, runs, ints, amounts, byYear }) => ({ shape, runs, ints, amounts, byYear }));
  return { reply: { type: 'runs', id, columns }, transfer: columns.flatMap(({ ints, amounts, byYear }) => [ints.buffer, amounts.buffer, byYear.buffer]) };
}
