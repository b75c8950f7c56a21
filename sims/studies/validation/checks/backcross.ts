import { donorLength, lostBesideMarker, lostBetweenMarkers, unbrokenPiece } from '../../../../src/genetics/drag.ts';
import { donorShareVariance, recurrentShare } from '../../../../src/genetics/recovery.ts';
import { published, type Check, type Checks } from '../entries.ts';

const each = (ids: RegExp, check: Check): Checks => Object.fromEntries(published.filter(({ id }) => ids.test(id)).map(({ id }) => [id, check]));

/** The gene in the middle of its chromosome. */
const central: Check = (inputs) => unbrokenPiece(inputs.number('t'), inputs.number('cM') / 2, inputs.number('cM') / 2);
/** So far from the ends that they do not matter, cM. */
const FAR = 100_000;

/** Back-crosses in closed form; the same figures are sampled with the engine's meiosis where there is a sampler of the same id. */
export const backcrossChecks: Checks = {
  ...each(/^bc-rp-/, (inputs) => recurrentShare(inputs.number('t'))),
  ...each(/^bc-var-/, (inputs) => donorShareVariance(inputs.number('t'), inputs.number('cM'))),
  ...each(/^drag-(central-|stamzeven-)/, central),
  'drag-infinite-bc': (inputs) => unbrokenPiece(inputs.number('t'), FAR, FAR),
  'drag-total-bc6': (inputs) => donorLength(inputs.number('t'), inputs.number('cM') / 2, inputs.number('cM') / 2),
  ...each(/^flank-loss-/, (inputs) => lostBetweenMarkers(inputs.number('r1'), inputs.number('r2'))),
  'flank-single-loss': (inputs) => lostBesideMarker(inputs.number('r'), inputs.number('t')),
};
