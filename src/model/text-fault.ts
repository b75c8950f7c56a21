import { clipped, type Problem } from './problem.ts';
import { MOST_DEEP, MOST_IN_ONE, type Fault, type FaultKind } from './text-scan.ts';

const LONGEST = 40;
const ANOTHER = 'Open another copy';

interface Says {
  /** @param place “on line 12, after “Old Hedgerow”” */
  readonly message: (place: string, key: string) => string;
  readonly fix: string;
}

const SAYS: Readonly<Record<FaultKind, Says>> = {
  empty: { message: () => 'There is nothing in it', fix: `${ANOTHER}.` },
  foreign: { message: () => 'This is not a programme of Orchard Odds, but text of another kind', fix: 'Open a file that Orchard Odds has saved.' },
  cutShort: { message: (place) => `It breaks off ${place}: it may have been cut short on the way`, fix: `${ANOTHER}, or fetch this one again.` },
  broken: { message: (place) => `It cannot be read any further ${place}`, fix: 'Undo there what was last changed by hand, or open another copy.' },
  goesOn: { message: (place) => `It goes on after its end, ${place}`, fix: 'Remove what follows, or open another copy.' },
  twice: { message: (place, key) => `“${key}” stands twice in the same entry, ${place}`, fix: 'Remove the one that is wrong.' },
  forbidden: { message: (place, key) => `“${key}” is no entry of a programme, ${place}`, fix: 'Remove it, or open another copy.' },
  tooDeep: {
    message: (place) => `Entries stand in one another more than ${String(MOST_DEEP)} deep, ${place}`,
    fix: `No programme of ours does that. ${ANOTHER}.`,
  },
  tooLong: {
    message: (place) => `More than ${String(MOST_IN_ONE)} entries stand in one list, ${place}`,
    fix: `No programme of ours has so many. ${ANOTHER}.`,
  },
  tooMuch: { message: () => 'It holds far more entries than a programme can', fix: `${ANOTHER}.` },
};

/** A fault of the text in words: where it is, and the way out. */
export function problemOfFault({ kind, line, after, key = '' }: Fault): Problem {
  const place = `on line ${String(line)}${after === null ? '' : `, after “${clipped(after, LONGEST)}”`}`;
  const { message, fix } = SAYS[kind];
  return { path: [], message: message(place, clipped(key, LONGEST)), fix, stops: true };
}
