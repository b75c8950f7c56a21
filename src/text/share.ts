const grouped = (n: number): string => String(n).replace(/\B(?=(\d{3})+$)/g, ',');

/** Words of sharing a programme by link or file. */
export const share = {
  open: 'Share',
  title: 'Share this programme',
  lede: 'The whole programme stands in the link itself. No server is sent it; it goes where you send it. Whoever opens it gets a copy of their own.',
  everything: 'Whoever has the link can read all that is in it: names, notes and sources.',
  link: 'Link',
  making: 'The link is being made.',
  short: (letters: number) => `${grouped(letters)} letters long: short enough for a mail.`,
  long: (letters: number, most: number) =>
    `${grouped(letters)} letters long. Many mail programs break links of more than about ${grouped(most)} (from memory): send the file by mail instead. The link serves where it stays whole, as in a chat or a bookmark.`,
  fromFile: 'This page was opened from a file on this device, so the link works on this device only. Send the file.',
  onlyHere: 'This page runs on this computer alone, so the link works only on this computer: send the file.',
  failed: 'The link could not be made. Send the file instead.',
  copy: 'Copy the link',
  copied: 'Copied.',
  notCopied: 'This browser does not let the page copy. The link is marked: copy it by hand.',
  file: 'Save a file to send',
  close: 'Close',
} as const;
