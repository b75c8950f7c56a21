/** Words around the guide in the app; the guide itself is `docs/guide.md`, `docs/answers.md` and `docs/model.md`. */
export const guide = {
  title: 'Guide',
  parts: { guide: 'Guide', answers: 'Twenty questions, answered', model: 'The model, with every formula' },
  partsLabel: 'Parts of the guide',
  onThisPage: 'On this page',
  wide: 'Table that may be moved sideways',
  formula: 'Lines that may be moved sideways',
} as const;

export type GuidePart = keyof typeof guide.parts;
