import type { Programme } from '../model/programme.ts';

/** For each plan, by id, a text of all that its results depend on: everything but words that are only read, and the log unless it is forecast from. */
export function planKeys(programme: Programme): Map<string, string> {
  const { title: _title, note: _note, example: _example, log, plans, ...rest } = programme;
  const shared = JSON.stringify(log.forecastFrom === undefined ? rest : { ...rest, log });
  return new Map(
    plans.map((plan) => {
      const { name: _name, note: _planNote, mark: _mark, ...body } = plan;
      return [plan.id, `${shared} ${JSON.stringify(body)}`];
    }),
  );
}
