import type { Interval } from '../results/outlook.ts';
import { counted, percent, percentRange, whole } from './charts.ts';
import type { Piece } from './headline.ts';

/** Words of the page “What do I tell others?”. */

export const tell = {
  headline: (mark: string, often: string, by: number, nothing: number, asks: number): Piece[] => [
    { text: 'One page says', strong: true },
    {
      text: ` that ${mark} has a proven tree ${often} by ${String(by)}, that ${nothing === 0 ? 'hardly any of 100 futures end' : `${String(nothing)} of 100 futures ${nothing === 1 ? 'ends' : 'end'}`} with nothing, and asks `,
    },
    { text: `${counted(asks)} ${asks === 1 ? 'thing' : 'things'}`, strong: true },
    { text: ' of others.' },
  ],
  lede: 'The sheet below is what others get: on paper, as one file, or as a link that tells it in four steps. You choose what is left out.',
  choices: 'What the sheet says',
  wanted: 'What is wanted, in your own words',
  wantedHelp: 'Leave it empty for what the goal says.',
  lead: 'The way that others are asked to help with',
  surest: 'the surest',
  leaveOut: 'Leave out',
  trees: 'names of trees',
  gardens: 'names of gardens',
  notes: 'notes, and what you noted beside your own numbers',
  title: 'the title',
  log: 'the season log',
  plans: 'Ways on the sheet',
  leaveOutHelp:
    'What is left out here is left out of the link too; the season log goes with any names or notes. Read the sheet through before it goes: a place may stand in a sentence of your own.',
  withoutLog: 'Without the log the link counts from the first spring: it gives the first forecast, not the one from what stands.',
  paper: 'Paper',
  papers: { A4: 'A4', Letter: 'Letter' },
  sheet: 'The sheet',
  which: 'For somebody to read, send this sheet as one file. For somebody to try things out, send the programme: “Save a copy”.',
  print: 'Print',
  file: 'Save as one file',
  svg: 'Picture as SVG',
  png: 'Picture as PNG',
  waiting: 'The sheet is saved and printed when all futures are counted.',
  failed: 'That could not be made in this browser. Print the sheet instead.',
  saved: (name: string): string => `${name} was handed to the browser.`,
  pictureSource: (word: string, engine: string, runs: number, date: string): string =>
    `Orchard Odds, engine ${engine}, shuffle word “${word}”, ${whole(runs)} futures a plan, ${date}. A planning aid, not a promise.`,
  link: 'A link that tells it in four steps',
  linkLede:
    'Whoever opens it sees what is wanted, how long it takes, how sure it is and what they would do, and can open the programme as a copy of their own. The whole programme stands in the link; no server is sent it.',
  look: 'See it as they will',
} as const;

export const sealed = {
  title: 'A sealed forecast',
  lede: 'Today’s chances, year by year, in a small file with its date, to be opened and compared in later years. It is a file and not kept on this device: a browser’s storage seldom lives as long as a tree, and a file can lie with somebody else who saw it sealed.',
  seal: 'Seal today’s forecast',
  open: 'Open a sealed forecast',
  cannotSeal: 'This page did not come over a safe line, so the forecast cannot be sealed here. Save the sheet as one file instead.',
  refused: (name: string): string => `“${name}” was not opened.`,
  headline: (date: string): string => `Sealed on ${date}`,
  then: 'then',
  now: 'now',
  year: 'Year',
  caption: 'Chance of a proven tree by the end of each year, as forecast then and as forecast now; in brackets what the number of futures leaves open.',
  gone: 'no longer in the programme',
  other: 'It was sealed from another state of this programme: plans are compared by their letter and place in the file.',
  same: 'It was sealed from the programme as it stands now.',
  engines: (then: string, now: string): string => `It was sealed by engine ${then}; this page runs engine ${now}, so part of a difference may be the engine’s.`,
  share: ({ value, low, high }: Interval): string => `${percent(value)} (${percentRange(low, high)})`,
  change: (plan: string, then: Interval, now: Interval, year: number): string =>
    `${plan}: ${percent(then.value)} then, ${percent(now.value)} now, by ${String(year)}: ${now.low > then.high ? 'better than was forecast.' : now.high < then.low ? 'worse than was forecast.' : 'no clear difference.'}`,
  noneCommon: 'No plan of it is in the programme that is open now. Open the programme it was sealed from.',
  missing: '–',
  close: 'Close',
  damaged: {
    notText: 'It is not text, so it is no sealed forecast. Choose the file that was saved when the forecast was sealed.',
    cut: 'It breaks off or was changed: it cannot be read as a sealed forecast. Fetch another copy of it.',
    other: 'It is no sealed forecast of Orchard Odds. Choose the file that was saved when the forecast was sealed.',
    newer: (version: number): string => `It was sealed by a newer Orchard Odds (version ${String(version)}). Open it with the newer one.`,
    form: 'It has a part that is missing or is not what it should be. Fetch another copy of it.',
    broken: 'Its seal is broken: something in it was changed after it was sealed. Fetch another copy of it.',
    large: 'It is larger than 5 MB; a sealed forecast is far smaller. Choose another file.',
    unchecked: 'It cannot be checked here, because this page did not come over a safe line. Open the page over https.',
  },
} as const;
