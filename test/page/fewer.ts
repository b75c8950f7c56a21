/** Files of the built page in which a number may be changed: its entry, and its threads. */
export const WITH_NUMBERS = /\/assets\/(?:index|browser-host|asking-host)-[\w-]+\.js$/;

/** As built: futures a plan of the example, futures for each set of guesses. */
const WHOLE = { example: 4000, aSet: 100 } as const;

type Change = readonly [place: RegExp, number: number];

/**
 * A built file with fewer futures: a plan of the example, for each set of guesses of any document (where they are asked for, and where they are
 * told), and in a cell of the map of grafting, which then keeps those of its quick look. Nothing else differs from what was built.
 * @param path of the file, one of `WITH_NUMBERS`
 * @param futures a plan of the example; with its own 4,000, nothing changes
 * @throws where a number no longer stands in its place, so that nobody waits for thousands of futures without knowing
 */
export function withFewer(path: string, text: string, futures: number): string {
  if (futures >= WHOLE.example) return text;
  const aSet = Math.ceil((WHOLE.aSet * futures) / WHOLE.example);
  const entry: readonly Change[] = [
    [/(=)4e3(?=,)/, futures],
    [/(\.factSets\([\w$]+,[\w$]+,[\w$]+,)100(?=\))/, aSet],
    [/(\{provenBy:[\w$]+,sets:100,futures:)100(?=\})/, aSet],
  ];
  const asking: readonly Change[] = [[/(\(let [\w$]+ of\[100,)300(?=\]\))/, 100]];
  const changes = path.includes('/index-') ? entry : path.includes('/asking-host-') ? asking : [];
  return changes.reduce((before, [place, number]) => {
    if (!place.test(before)) throw new Error(`Nothing like ${String(place)} in ${path}: see test/page/fewer.ts.`);
    return before.replace(place, `$1${String(number)}`);
  }, text);
}
