/** Take by method. Each stock of a kind is offered once for every usual method, as an entry of its own. */
import type { Stock } from '../model/programme.ts';
import { NORMAL, TREE_LOSS } from './ordinary.ts';
import { guess, published } from './sources.ts';
import type { Figure } from './types.ts';

export interface Method {
  readonly id: string;
  /** Behind the name of the stock: “seedling apple, chip-budded”. */
  readonly done: string;
  readonly take: Figure;
}

const TRIAL = 'Indian J. Hortic. 2018, pome and stone fruits under plastic';
export const chip: Method = {
  id: 'chip',
  done: 'chip-budded',
  take: published([0.869, 0.91, 0.959], 'high', `${TRIAL}: 86.9–95.9 % of chip buds took. Outdoors expect less.`),
};
export const tBud: Method = {
  id: 't-bud',
  done: 'T-budded',
  take: published([0.845, 0.87, 0.895], 'high', `${TRIAL}: 84.6–89.5 % of T-buds took in summer. Outdoors expect less.`),
};
export const cleft: Method = {
  id: 'cleft',
  done: 'cleft-grafted',
  take: published([0.815, 0.85, 0.891], 'high', `${TRIAL}: 81.5–89.1 % of wedge grafts took. Outdoors expect less.`),
};
export const tongue: Method = {
  id: 'tongue',
  done: 'whip-and-tongue',
  take: published([0.794, 0.83, 0.866], 'high', `${TRIAL}: 79.4–86.6 % of tongue grafts took. Outdoors expect less.`),
};

/** The same method where another count is known. */
export const taking = (method: Method, take: Figure): Method => ({ ...method, take });

export const TENDER = published(
  [0.2, 0.6, 0.93],
  'middling',
  'Horticulturae 2022, 8:576: 42–93 % of micrografts of three apple scions took, in glass. A garden grower’s chips from 2–3-month seedlings: 2 of 8 grew.',
);
export const TENDER_GUESS = guess(
  [0.2, 0.55, 0.9],
  'Not counted for this kind. Apple micrografts in glass took 42–93 %; in one garden 2 of 8 chips from 2–3-month seedlings grew.',
);

export interface StockFigures {
  readonly id: string;
  readonly name: string;
  readonly methods: readonly Method[];
  readonly tender?: Figure;
  readonly yearlyLoss?: Figure;
  readonly precocity?: Figure;
  readonly fertility?: Figure;
  /** Room of a grafted tree, in places of a seedling. */
  readonly place?: number;
  readonly note?: string;
}

/** One stock entry a method. */
export const stocksOf = ({
  id,
  name,
  methods,
  tender = TENDER_GUESS,
  yearlyLoss = TREE_LOSS,
  precocity = NORMAL,
  fertility = NORMAL,
  place = 1,
  note,
}: StockFigures): readonly Stock[] =>
  methods.map((method) => ({
    id: `${id}-${method.id}`,
    name: `${name}, ${method.done}`,
    yearlyLoss,
    place,
    precocity,
    takeTender: tender,
    takeRipe: method.take,
    ripeMonths: 12,
    fertility,
    ...(note === undefined ? {} : { note }),
  }));
