import type { Programme } from '../model/programme.ts';

/** For each plan, by id, a text of all that its results depend on: everything but words that are only read, and the log. */
export function planKeys(programme: Programme): Map<string, string> {
  const { title: _title, note: _note, example: _example, log: _log, plans, ...rest } = programme;
  const shared = JSON.stringify(rest);
  return new Map(
    plans.map((plan) => {
      const { name: _name, note: _planNote, mark: _mark, ...body } = plan;
      return [plan.id, `${shared} ${JSON.stringify(body)}`];
    }),
  );
}
