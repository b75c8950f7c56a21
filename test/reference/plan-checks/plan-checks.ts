export { PlanCheck, planCheckIds } from '../../../sims/studies/validation/plans/plan-checks.ts';
