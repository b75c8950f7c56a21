export { Inputs, published } from '../../sims/studies/validation/entries.ts';
