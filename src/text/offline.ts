/** Words about working without a connection, and about a newer version of the page. */
export const offline = {
  ready: 'this page now opens without a connection, too',
  newer: 'A newer version of Orchard Odds is there. What you do is saved first, then the page loads anew.',
  take: 'Take it now',
  later: 'Later',
  notHere: 'This part of the page is not on this device yet and could not be fetched. Connect once and load the page again; nothing is lost.',
  notSaved: 'The newer version waits: what you have here could not be saved first.',
} as const;
