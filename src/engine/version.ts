/** Changes whenever the same programme, word and number of runs give other results. A file of its own: whoever names it need not load the engine. */
export const ENGINE = '1';
