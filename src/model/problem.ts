export type Path = readonly (string | number)[];

/** Something that is wrong or worth knowing, in words, at a place in the document. */
export interface Problem {
  readonly path: Path;
  readonly message: string;
  /** What to do about it. */
  readonly fix?: string;
  /** True: the programme cannot run until it is mended. False: it runs, but the answer may not mean what was meant. */
  readonly stops: boolean;
}

/** As long as a name may be; a strange file can hold names of any length, and a sentence must stay one. */
const LONGEST = 80;
export const clipped = (words: string, longest = LONGEST): string =>
  words.length > longest
    ? `${Array.from(words.slice(0, longest * 2))
        .slice(0, longest)
        .join('')}…`
    : words;

/** A path as a place that a person finds: names instead of numbers where the document has them. */
function placeOf(document: unknown, path: Path): string {
  const words: string[] = [];
  let here: unknown = document;
  for (const key of path) {
    here = isRecord(here) || Array.isArray(here) ? (here as Record<string | number, unknown>)[key] : undefined;
    if (typeof key === 'number') {
      const label = isRecord(here) && typeof here['name'] === 'string' ? `“${clipped(here['name'])}”` : String(key + 1);
      words.push(label);
    } else words.push(clipped(key));
  }
  return words.join(' › ');
}

export const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);

/** The whole sentence: place, what is wrong, and the way out. */
export function sentence(document: unknown, { path, message, fix }: Problem): string {
  const place = path.length > 0 ? `${placeOf(document, path)}: ` : '';
  return `${place}${message}${/[.!?]$/.test(message) ? '' : '.'}${fix === undefined ? '' : ` ${fix}`}`;
}
