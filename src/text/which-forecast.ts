/** A line for pages that show one of the two forecasts. */
export const whichForecast = {
  today: (year: number) => `Forecast from what stands before spring ${String(year)}, by your log.`,
  change: 'Change this',
} as const;
