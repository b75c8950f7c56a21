export { chanceOneKept } from '../../../sims/studies/validation/plans/season-luck.ts';
