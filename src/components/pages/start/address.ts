import { QUESTIONS } from '../../../start/problems.ts';

const ADDRESS = '#/start';
/** Whether an address leads to the questions. */
export const isOfStart = (address: string): boolean => address === ADDRESS || address.startsWith(`${ADDRESS}/`);

/** “#/start/2” is the second question, at place 1; undefined where the address names none. */
export function stepOf(address: string): number | undefined {
  const place = isOfStart(address) ? Number(address.slice(ADDRESS.length + 1)) - 1 : -1;
  return QUESTIONS[place] === undefined ? undefined : place;
}

/**
 * Gives the question its address, so that Back and Forward go from question to question.
 * @param inPlace without a step for Back to come to: the address is put right, nobody went anywhere
 */
export function writeStep(step: number, inPlace: boolean): void {
  const address = `${ADDRESS}/${String(step + 1)}`;
  if (!isOfStart(location.hash) || location.hash === address) return;
  if (inPlace) history.replaceState(history.state, '', address);
  else location.hash = address;
}
