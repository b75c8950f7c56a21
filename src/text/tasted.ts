const NB = '\u00a0';

/** Words for drawing a tasted mean towards the reference. */
export const tastedText = {
  open: 'from a tasted mean …',
  legend: (trait: string) => `${trait}: from what you tasted`,
  why: 'A few good seasons flatter a tree. This draws its tasted mean towards the mean of a reference tree, the more so the fewer the seasons.',
  mean: 'Tasted mean',
  seasons: 'Seasons judged',
  seasonsUnit: 'seasons',
  found: (kept: string, value: string, low: string, high: string, unit: string) =>
    `Keeps ${kept}${NB}% of its distance from the mean: true value about ${value}${NB}${unit}, at the outermost ${low}\u2060–\u2060${high}.`,
  use: 'Use it',
  cancel: 'Leave it as it is',
  note: (tasted: string, unit: string, seasons: number, mean: string) =>
    `tasted mean ${tasted} ${unit} of ${String(seasons)} ${seasons === 1 ? 'season' : 'seasons'}, drawn towards the reference ${mean}`,
} as const;

/** Words of the list of everything in the programme. */
export const panelText = {
  traitType: 'This trait is',
  shown: 'shown or not',
  measured: 'measured',
  typeNote: 'A change keeps its name and note, and the conditions that ask for it, without their bounds. What was stated of trees goes. Undo brings it back.',
  typeChanged: (name: string, type: string) => `${name}: now ${type}`,
  needsGene: 'needs a gene first',
  home: 'home',
} as const;
