import { rescueSites } from '../../../decisions/rescue-sites.ts';
import type { Plan, Programme } from '../../../model/programme.ts';

/** The plan that questions are asked of until another is chosen: one that grafts weak seedlings, or could; else the first. */
export function firstAsked(programme: Programme): Plan | undefined {
  const sites = programme.plans.map((plan) => ({ plan, sites: rescueSites(programme, plan) }));
  const grafting = sites.find((entry) => entry.sites.some(({ stands }) => stands !== 'none')) ?? sites.find((entry) => entry.sites.length > 0);
  return grafting?.plan ?? programme.plans[0];
}
