import type { ImportChoices } from '../../src/seasonlog/import/import.ts';

/** What must be seen in a file. */
export interface Shown {
  readonly separator: string;
  readonly roles: readonly string[];
  readonly batches: number;
  readonly trees: number;
  /** Every sort of flag that its cells get, and no other. */
  readonly flags: readonly string[];
  readonly first?: object;
  /** Texts that must stand somewhere in the log. */
  readonly mustStand?: readonly string[];
}

export interface WholeFile {
  readonly source: string | Uint8Array;
  readonly choices?: ImportChoices;
  readonly shown: Shown;
}

const utf16 = (text: string): Uint8Array =>
  new Uint8Array([0xff, 0xfe, ...Array.from(text).flatMap((letter) => [letter.charCodeAt(0) & 255, letter.charCodeAt(0) >> 8])]);
/** Each letter below 256 is one byte of Windows-1252, as of Latin-1. */
const latin = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

/** Invented notebooks, each kept in a habit of its own. */
export const FILES: Readonly<Record<string, WholeFile>> = {
  'a European notebook: semicolons, points between thousands, days with points, BOM and CRLF': {
    source:
      '\ufeffMutter;Seed parent;Pollen parent;Year;Flowers;Pollination date;Fruits;Seeds;Remarks\r\n' +
      'x;Old Hedgerow;Mill Quince;2019;1.200;28.4.2019;34;52;windig, 4,5 °C\r\n' +
      'y;old hedgerow ;Saffron Bell;2019;850;29.4.2019;~140;10–12;\r\n',
    shown: {
      separator: ';',
      roles: ['keep', 'seed', 'pollen', 'year', 'count:flowers', 'when', 'count:fruits', 'count:seeds', 'note'],
      batches: 2,
      trees: 0,
      flags: ['about', 'range', 'spaces', 'thousands'],
      mustStand: ['windig, 4,5 °C', 'Fruits: ~140', 'Seeds: 10–12', 'Mutter: y'],
      first: {
        seed: { tree: 'old-hedgerow' },
        pollen: { tree: 'mill-quince' },
        year: 2019,
        counts: [
          { stage: 'flowers', count: 1200, when: '2019-04-28' },
          { stage: 'fruits', count: 34 },
          { stage: 'seeds', count: 52 },
        ],
      },
    },
  },
  'a European notebook whose other column tells the decimal comma': {
    source:
      'Tag;Cross;Year;Season;Brix\n1;Old Hedgerow x Mill Quince;2019;2027;12,5\n2;Old Hedgerow x Mill Quince;2019;2027;13,25\n3;Old Hedgerow x Mill Quince;2019;2027;1,125\n',
    shown: {
      separator: ';',
      roles: ['tag', 'cross', 'year', 'season', 'value:brix'],
      batches: 1,
      trees: 3,
      flags: ['decimal'],
      first: {
        trees: [{ seasons: [{ year: 2027, values: { brix: 12.5 } }] }, { seasons: [{ values: { brix: 13.25 } }] }, { seasons: [{ values: { brix: 1.125 } }] }],
      },
    },
  },
  'an American notebook: month first, thousands with commas': {
    source:
      'Cross,Flowers,Date,Fruit set,Germinated\n"Old Hedgerow x Mill Quince","1,500",4/28/2019,30,12\n"(Old Hedgerow x K80-2) x Saffron Bell",240,5/3/2019,>12,9+\n',
    shown: {
      separator: ',',
      roles: ['cross', 'count:flowers', 'when', 'count:fruits', 'count:cameUp'],
      batches: 2,
      trees: 0,
      flags: ['atLeast', 'thousands'],
      mustStand: ['Fruit set: >12', 'Germinated: 9+', 'Old Hedgerow x K80-2'],
      first: {
        year: 2019,
        counts: [
          { stage: 'flowers', count: 1500, when: '2019-04-28' },
          { stage: 'fruits', count: 30 },
          { stage: 'cameUp', count: 12 },
        ],
      },
    },
  },
  'a notebook whose days could be months': {
    source: 'Cross,Flowers,Date\nOld Hedgerow x OP,20,3/4/2019\nSaffron Bell selfed,30,5/6/2019\n',
    shown: {
      separator: ',',
      roles: ['cross', 'count:flowers', 'when'],
      batches: 2,
      trees: 0,
      flags: ['twoDates'],
      mustStand: ['Date: 3/4/2019', 'Date: 5/6/2019'],
      first: { pollen: 'open', year: 2019, counts: [{ stage: 'flowers', count: 20 }] },
    },
  },
  'southern seasons': {
    source: 'Season\tCross\tBags pollinated\tPicked\n2004/05\tOld Hedgerow × Mill Quince\t40\t12\n2005-06\tOld Hedgerow × Mill Quince\t38 bags of 2\t0\n',
    shown: {
      separator: '\t',
      roles: ['year', 'cross', 'count:flowers', 'picked'],
      batches: 2,
      trees: 0,
      flags: ['notKnown', 'seasonName'],
      mustStand: ['Season: 2004/05', 'Picked: 12'],
      first: { year: 2004, counts: [{ stage: 'flowers', count: 40, unit: { name: 'bag', flowers: 1 } }] },
    },
  },
  'a tree list with labels that look like days and numbers': {
    source:
      'Label,Parents,Year,Block,Row,Tree,Status,First fruit,Red flesh 2027,Note\n' +
      '2019-8-1,Old Hedgerow OP,2018,A,1,001,alive,2026,3 of 6,\n' +
      '"235,2",Old Hedgerow OP,2018,A,1,002,dead 2023,,,canker\n' +
      '1106.1,Old Hedgerow OP,2018,A,1,003,moved,2027,yes,\n' +
      'K80-2,K12 x Old Hedgerow,2018,A,2,001,label lost,,no,=1+1\n' +
      '001,K12 x Old Hedgerow,2018,A,2,002,culled 2025,2024/25,,\n',
    shown: {
      separator: ',',
      roles: ['tag', 'cross', 'year', 'block', 'row', 'tree', 'status', 'firstFruit', 'seen:red', 'note'],
      batches: 2,
      trees: 5,
      flags: ['notKnown', 'seasonName', 'yesNo'],
      mustStand: ['2019-8-1', '235,2', '1106.1', 'K80-2', '=1+1', 'Status: moved', 'First fruit: 2024/25', 'canker'],
      first: {
        pollen: 'open',
        trees: [
          { tag: '2019-8-1', place: { block: 'A', row: '1', tree: '001' }, seasons: [{ year: 2027, seen: { red: { showed: 3, cut: 6 } } }] },
          { status: 'dead', statusSince: 2023 },
          { status: 'alive' },
        ],
      },
    },
  },
  'a tree list with a season on each row': {
    source:
      'Tree\tMother\tFather\tYear crossed\tPosition\tSeason\tBrix\tRed flesh\n7\tOld Hedgerow\tSaffron Bell\t2015\tB-2-7\t2024\t11.5\t0/5\n7\tOld Hedgerow\tSaffron Bell\t2015\tB-2-7\t2025\t12\t1/5\n8\tOld Hedgerow\tSaffron Bell\t2015\tB-2-8\t2025\tsweet\t\n',
    shown: {
      separator: '\t',
      roles: ['tag', 'seed', 'pollen', 'year', 'position', 'season', 'value:brix', 'seen:red'],
      batches: 1,
      trees: 2,
      flags: ['notNumber'],
      mustStand: ['Brix: sweet'],
      first: {
        trees: [
          {
            tag: '7',
            seasons: [
              { year: 2024, values: { brix: 11.5 }, seen: { red: { showed: 0, cut: 5 } } },
              { year: 2025, values: { brix: 12 } },
            ],
          },
          { tag: '8' },
        ],
      },
    },
  },
  'a file as an old spreadsheet saved it, in UTF-16 with tabs': {
    source: utf16('Batch\tSeed parent\tPollen\tYear\tSown\tCame up\r\nMoniquí 1\tMoniquí\tOld Hedgerow\t1998\t55\t31\r\n'),
    shown: {
      separator: '\t',
      roles: ['batch', 'seed', 'pollen', 'year', 'count:sown', 'count:cameUp'],
      batches: 1,
      trees: 0,
      flags: [],
      first: {
        name: 'Moniquí 1',
        seed: { tag: 'Moniquí' },
        pollen: { tree: 'old-hedgerow' },
        year: 1998,
        counts: [
          { stage: 'sown', count: 55 },
          { stage: 'cameUp', count: 31 },
        ],
      },
    },
  },
  'a file of an old machine, in Windows-1252 with non-breaking spaces': {
    source: latin('Cross;Year;Seeds\nMoniqu\u00ed \u00d7 Old\u00a0Hedgerow;1998;\u00a012\u00a0\n'),
    shown: {
      separator: ';',
      roles: ['cross', 'year', 'count:seeds'],
      batches: 1,
      trees: 0,
      flags: ['spaces'],
      first: { seed: { tag: 'Moniquí' }, pollen: { tree: 'old-hedgerow' }, counts: [{ stage: 'seeds', count: 12 }] },
    },
  },
  'cells that a spreadsheet would run': {
    source:
      'Tag,Cross,Year,Note\n"=HYPERLINK(""http://x"",""y"")",Old Hedgerow x OP,2018,+1\n@sum,Old Hedgerow x OP,2018,-2+3\n\'=A1,Old Hedgerow x OP,2018,\'+1\n',
    shown: {
      separator: ',',
      roles: ['tag', 'cross', 'year', 'note'],
      batches: 1,
      trees: 3,
      flags: ['apostrophe'],
      first: {
        trees: [
          { tag: '=HYPERLINK("http://x","y")', note: '+1' },
          { tag: '@sum', note: '-2+3' },
          { tag: '=A1', note: '+1' },
        ],
      },
    },
  },
  'ragged rows, headings that are missing and doubled, and titles above them': {
    source:
      'Pear book, 2015 to now\n\nBatch,Cross,Year,Flowers,,Flowers\nA,Old Hedgerow x Saffron Bell,2015,40\nB,Old Hedgerow x Saffron Bell,2016,30,rain,12,spilt\n\n',
    shown: {
      separator: ',',
      roles: ['batch', 'cross', 'year', 'count:flowers', 'keep', 'count:flowers', 'keep'],
      batches: 2,
      trees: 0,
      flags: [],
      mustStand: ['Pear book', 'column 5: rain', 'column 7: spilt'],
      first: { name: 'A', counts: [{ stage: 'flowers', count: 40 }] },
    },
  },
  'very long cells': {
    source: `Batch,Cross,Year,Remark\n${'n'.repeat(200)},${'p'.repeat(90)} x Old Hedgerow,2015,${'w'.repeat(3000)}\n`,
    shown: {
      separator: ',',
      roles: ['batch', 'cross', 'year', 'note'],
      batches: 1,
      trees: 0,
      flags: ['tooLong'],
      mustStand: [`Batch: ${'n'.repeat(200)}`, `Cross: ${'p'.repeat(90)} x Old Hedgerow`],
    },
  },
  'no headings at all': {
    source: 'Old Hedgerow x Mill Quince,2019,40\nSaffron Bell x Mill Quince,2020,12\n',
    shown: {
      separator: ',',
      roles: ['cross', 'year', 'keep'],
      batches: 2,
      trees: 0,
      flags: [],
      mustStand: ['column 3: 40'],
      first: { year: 2019, seed: { tree: 'old-hedgerow' } },
    },
  },
  'trees of which only tags and a sketch of a place are known': {
    source: 'ID;Where;What\n001;by the gate;red\n002;;\n;north hedge, third;seedling\n',
    choices: { year: 2012 },
    shown: {
      separator: ';',
      roles: ['tag', 'position', 'keep'],
      batches: 1,
      trees: 3,
      flags: ['noTag', 'notKnown'],
      mustStand: ['What: red', 'by', 'north'],
      first: { year: 2012, seed: 'unknown', pollen: 'unknown', trees: [{ tag: '001' }, { tag: '002' }, {}] },
    },
  },
  'a table of clusters with two ways of failing': {
    source: 'Seed parent,Clusters,Success,Failed early,Failed later\nAshmead\u2019s Kernel,8,2,4,3\nAnnie Elizabeth,5,0,5,0\n',
    choices: { year: 2012 },
    shown: {
      separator: ',',
      roles: ['seed', 'count:flowers', 'keep', 'keep', 'keep'],
      batches: 2,
      trees: 0,
      flags: ['notKnown'],
      mustStand: ['Success: 2', 'Failed early: 4', 'Failed later: 3'],
      first: { seed: { tag: 'Ashmead’s Kernel' }, pollen: 'unknown', counts: [{ stage: 'flowers', count: 8, unit: { name: 'cluster', flowers: 1 } }] },
    },
  },
};
