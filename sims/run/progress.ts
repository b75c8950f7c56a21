import { whole } from '../../src/text/charts.ts';

export interface ProgressLine {
  readonly at: (runs: number) => void;
  /** Clears the line; may be called more than once. */
  readonly end: () => void;
}

/** One line on a terminal that says how far the work is; nothing where no one looks. */
export function progressLine(stream: NodeJS.WriteStream, of: number): ProgressLine {
  if (!stream.isTTY) return { at: () => undefined, end: () => undefined };
  let shown = false;
  const show = (text: string) => {
    stream.write(`\r\u001b[K${text}`);
    shown = text !== '';
  };
  return {
    at: (runs) => show(runs < of ? `${whole(runs)} of ${whole(of)} futures` : `${whole(of)} futures; now what your guesses allow`),
    end: () => {
      if (shown) show('');
    },
  };
}
