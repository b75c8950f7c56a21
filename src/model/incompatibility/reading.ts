/** An S allele by its name (“S4'”), or null for one that is not known. */
export type NamedAllele = string | null;

export type SReading =
  | { readonly ok: true; readonly alleles: readonly NamedAllele[] }
  /** `at`: place of the first letter that cannot be read, from 1. */
  | { readonly ok: false; readonly at: number; readonly found: string; readonly message: string };

const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';
/** One way to write what is written in several: subscript figures, curly and typewriter primes. Letters keep their places. */
const plain = (text: string) =>
  Array.from(text, (letter) => {
    const figure = SUBSCRIPTS.indexOf(letter);
    if (figure >= 0) return String(figure);
    return "’‘′´`ʹ'".includes(letter) ? "'" : letter;
  }).join('');

/** S, then figures or small letters (S3, S13', Sa, Snull, S6m2), or S? */
const ALLELE = /S(?:(\?)|([0-9]+[a-z]*[0-9]*'*|[a-z]+[0-9]*'*))/y;
const BETWEEN = /[\s,;/]*/y;

/**
 * Reads S alleles as the trade writes them: S3S4', S1S?, “S6 S13' Sa Snull”, ScSd, S101S102.
 * @returns names in the order written, null for S?; no text, no alleles. What cannot be read is told with its place, and nothing is guessed.
 *
 * **Source:** ways of writing in Schuster (2012) and Kester et al. (1994) J. Amer. Soc. Hort. Sci. 119:106–109 (from memory).
 */
export function readSAlleles(text: string): SReading {
  const letters = plain(text);
  const alleles: NamedAllele[] = [];
  let at = skip(letters, 0);
  while (at < letters.length) {
    ALLELE.lastIndex = at;
    const match = ALLELE.exec(letters);
    if (!match) return unread(text, at);
    alleles.push(match[1] === '?' ? null : `S${match[2] ?? ''}`);
    at = skip(letters, ALLELE.lastIndex);
  }
  return { ok: true, alleles };
}

function skip(letters: string, from: number): number {
  BETWEEN.lastIndex = from;
  BETWEEN.exec(letters);
  return BETWEEN.lastIndex;
}

function unread(text: string, at: number): SReading {
  const found = text.slice(at, at + 12);
  return { ok: false, at: at + 1, found, message: `“${found}”, from letter ${String(at + 1)}, is no S allele` };
}
