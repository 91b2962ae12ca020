import { describe, expect, test } from 'vitest';
import { feet } from '../../../src/document/demo/feet.ts';
import { readRuns } from '../../../src/document/lists/read-runs.ts';
import { listJob } from './list-job.ts';

const HEAD = 'run,level,type,conductor side,leg lengths';
const GOOD = 'F2-R01-A,F2,demo-250A-3PN,left,70';

function read(...lines: string[]) {
  return readRuns(lines.join('\n'), listJob());
}

function faultsOf(result: ReturnType<typeof readRuns>) {
  return result.ok ? [] : result.faults.map(({ row, column, problem, remedy }) => ({ row, column, problem, remedy }));
}

describe('a clean list', () => {
  const full = [
    'Run;Level;Area;Type;Side;Paired run;Conductor side;Feed;X;Y;Z;Heading;Leg lengths;Turns;Rod;Drop',
    `F2-R01-A;F2;Hall 2;demo-250A-3PN;A;F2-R01-B;left;centre @ 30'-0";0;-10' 6";9'-3";90;"61; 34 ft";left;3/8;6'-9"`,
    'F2-R01-B;F2;;demo-250A-3PN;B-side;F2-R01-A;Right;;;;;;21336 mm;;;',
    `F2-R02;F2;;demo-250A-3PN;;;left;tee F1-R01-A @ 41'-0" left;;;;;31;;M10;2 m`,
  ];

  test('is read into runs, in any form of length', () => {
    expect(read(...full)).toMatchObject({
      ok: true,
      made: [
        {
          id: 'F2-R01-A',
          level: 'F2',
          area: 'Hall 2',
          type: 'demo-250A-3PN',
          side: 'A',
          pairedRun: 'F2-R01-B',
          start: { xMm: 0, yMm: -feet(10.5), zMm: feet(9.25) },
          headingDeg: 90,
          conductorSide: 'left',
          feed: { kind: 'centre', atMm: feet(30) },
          legs: [
            { lengthMm: feet(61), turn: 'left' },
            { lengthMm: feet(34), turn: 'none' },
          ],
          dropMm: feet(6.75),
          rod: '3/8',
        },
        {
          id: 'F2-R01-B',
          side: 'B',
          conductorSide: 'right',
          feed: { kind: 'end' },
          legs: [{ lengthMm: 21_336, turn: 'none' }],
        },
        {
          id: 'F2-R02',
          feed: { kind: 'tee', fromRun: 'F1-R01-A', atMm: feet(41), branchSide: 'left' },
          legs: [{ lengthMm: feet(31), turn: 'none' }],
          rod: 'M10',
          dropMm: 2000,
        },
      ],
      questions: [],
    });
  });

  test('says beforehand what it will make', () => {
    expect(read(...full)).toMatchObject({
      preview: {
        runs: 3,
        lengthMm: feet(196),
        levels: [{ level: 'F2', runs: 3, lengthMm: feet(196) }],
        first: [{ id: 'F2-R01-A' }, {}, {}],
      },
    });
  });

  test('makes only what it says: an empty cell makes no key', () => {
    expect(read(HEAD, GOOD)).toMatchObject({
      ok: true,
      made: [
        {
          id: 'F2-R01-A',
          level: 'F2',
          type: 'demo-250A-3PN',
          conductorSide: 'left',
          feed: { kind: 'end' },
          legs: [{ lengthMm: feet(70), turn: 'none' }],
        },
      ],
    });
  });

  test.each([
    [
      'tabs, as a spreadsheet pastes them',
      'Run\tLevel\tType\tConductor side\tLeg lengths\nF2-R1\tF2\tdemo-250A-3PN\tleft\t70\'-0"',
    ],
    [
      'semicolons',
      'run;level;type;conductor side;leg lengths\nF2-R1;F2;demo-250A-3PN;left;"61;34"\n'.replace('"61;34"', '70'),
    ],
    ['a byte order mark and the line ends of another system', `\uFEFF${HEAD}\r\nF2-R1,F2,demo-250A-3PN,left,70\r\n`],
    [
      'headings in capitals, in another order, with other marks',
      'LEG_LENGTHS,Conductor-Side,TYPE,Floor,Run ID\n70,LEFT,demo-250A-3PN,F2,F2-R1',
    ],
    [
      'quoted cells',
      `"run","level","type","conductor side","leg lengths"\n"F2-R1","F2","demo-250A-3PN","left","70'-0"""`,
    ],
    ['empty rows and columns at the end', `${HEAD},,\nF2-R1,F2,demo-250A-3PN,left,70,,\n,,,,,,\n\n   \n`],
    ['a heading that gives the unit', `${HEAD} (mm)\nF2-R1,F2,demo-250A-3PN,left,21336`],
  ])('may have %s', (_what, text) => {
    expect(readRuns(text, listJob())).toMatchObject({
      ok: true,
      made: [{ id: 'F2-R1', legs: [{ lengthMm: feet(70) }] }],
    });
  });

  test('is read in millimetres in a metric job', () => {
    expect(readRuns(`${HEAD}\nF2-R1,F2,demo-250A-3PN,left,21336`, listJob('metric'))).toMatchObject({
      made: [{ legs: [{ lengthMm: 21_336 }] }],
    });
  });

  test('of 10.6 for ten feet six is taken as typed, and asked about', () => {
    expect(read(HEAD, 'F2-R1,F2,demo-250A-3PN,left,10.6')).toMatchObject({
      ok: true,
      questions: [
        { row: 2, column: 'leg lengths', value: '10.6', problem: `10.6 ft is 10'-7 3/16". Did you mean 10'-6"?` },
      ],
    });
  });
});

describe('a bad list makes nothing, and tells every cell', () => {
  test('a heading that was merged over three columns names none of them', () => {
    expect(faultsOf(read(`${HEAD},start,,`, `${GOOD},0,0,9`)).map(({ row, column }) => [row, column])).toEqual([
      [1, 'start'],
      [1, 'column 7'],
      [1, 'column 8'],
    ]);
  });

  test('every fault of every row at once, by the spreadsheet’s own rows', () => {
    const result = read(HEAD, 'F2-R1,F3,demo-250A-3PN,left,21336', '', 'F2-R2,F2,demo-250a-3pn,both,70', GOOD);
    expect(faultsOf(result)).toEqual([
      { row: 2, column: 'level', problem: 'The job has no level "F3".', remedy: expect.stringContaining('F1 or F2') },
      {
        row: 2,
        column: 'leg lengths',
        problem: '21,336 ft is 4 miles.',
        remedy: '21,336 mm = 70.0 ft. If you meant millimetres, write 21336 mm.',
      },
      {
        row: 4,
        column: 'type',
        problem: 'The job has no busway type "demo-250a-3pn".',
        remedy: 'Did you mean demo-250A-3PN?',
      },
      { row: 4, column: 'conductor side', problem: '"both" is not left or right.', remedy: 'Write one of these.' },
    ]);
  });

  test.each([
    ['nothing at all', '', { row: null, problem: 'The list is empty.' }],
    ['headings alone', HEAD, { row: null, problem: 'There is no row below the headings.' }],
    ['the wrong separator', HEAD.replaceAll(',', '|'), { row: 1, problem: 'Only one column was found.' }],
    ['rows without headings', GOOD, { row: 1, problem: 'The first row holds no headings that are known.' }],
    [
      'a title merged above the headings',
      `Run list of block C,,,,\n${HEAD}\n${GOOD}`,
      { row: 1, problem: 'Row 1 holds no headings; they stand in row 2.' },
    ],
    [
      'a heading merged over columns',
      `${HEAD},start,,\n${GOOD},0,,`,
      { row: 1, column: 'start', problem: 'This column is not known.' },
    ],
    [
      'a heading that is missing',
      `${HEAD},\n${GOOD},9`,
      { row: 1, column: 'column 6', problem: 'This column has cells but no heading.' },
    ],
    [
      'a column that is missing',
      'run,level,type,leg lengths\nF2-R1,F2,demo-250A-3PN,70',
      { row: 1, column: 'conductor side', problem: 'The column conductor side is missing.' },
    ],
    [
      'a column twice',
      `${HEAD},Level\n${GOOD},F1`,
      { row: 1, column: 'Level', problem: 'A second column is called Level.' },
    ],
    [
      'a column that is not known',
      `${HEAD},colour\n${GOOD},red`,
      { row: 1, column: 'colour', problem: 'This column is not known.' },
    ],
    [
      'a thousands comma that is not quoted',
      `${HEAD}\nF2-R1,F2,demo-250A-3PN,left,21,336 mm`,
      { row: 2, problem: 'The row has 1 more cell than there are headings.' },
    ],
    [
      'a quotation mark that is never closed',
      `${HEAD}\n"F2-R1,F2,demo-250A-3PN,left,70`,
      { problem: 'A quotation mark is not closed.' },
    ],
    [
      'a formula',
      `${HEAD}\n=A1&"x",F2,demo-250A-3PN,left,70`.replaceAll('"x"', 'x'),
      { row: 2, column: 'run', problem: 'The cell holds a formula.' },
    ],
    [
      'an error of the spreadsheet',
      `${HEAD}\nF2-R1,#N/A,demo-250A-3PN,left,70`,
      { row: 2, column: 'level', problem: 'The cell holds an error of the spreadsheet.' },
    ],
    [
      'a cell that was too narrow',
      `${HEAD}\nF2-R1,F2,demo-250A-3PN,left,#####`,
      { row: 2, column: 'leg lengths', problem: 'The column was too narrow to show the cell.' },
    ],
    [
      'an empty cell that must be filled',
      `${HEAD}\n,F2,demo-250A-3PN,left,70`,
      { row: 2, column: 'run', problem: 'run is empty.' },
    ],
    [
      'a run that the job has',
      `${HEAD}\nF1-R01-A,F1,demo-250A-3PN,left,70`,
      { row: 2, column: 'run', problem: 'The job already has run F1-R01-A.' },
    ],
    [
      'a run twice',
      `${HEAD}\n${GOOD}\n${GOOD}`,
      { row: 3, column: 'run', problem: 'Run F2-R01-A stands in row 2 already.' },
    ],
    ['a phase for a side', `${HEAD},side\n${GOOD},L1`, { row: 2, column: 'side', problem: '"L1" is a phase.' }],
    [
      'a rod that became a date',
      `${HEAD},rod\n${GOOD},8-Mar`,
      { row: 2, column: 'rod', problem: '8-Mar is a date: the spreadsheet made one of a fraction.' },
    ],
    [
      'a drop in millimetres among feet',
      `${HEAD},drop\n${GOOD},2057`,
      { row: 2, column: 'drop', remedy: expect.stringContaining('2,057 mm = 6.7 ft') },
    ],
    [
      'two legs and no turn',
      `${HEAD}\nF2-R1,F2,demo-250A-3PN,left,61; 34`,
      { row: 2, column: 'turns', problem: 'The run has 2 legs and 0 turns.' },
    ],
    [
      'one leg and a turn',
      `${HEAD},turns\n${GOOD},left`,
      { row: 2, column: 'turns', problem: 'The run has 1 leg and 1 turn.' },
    ],
    [
      'an empty leg',
      `${HEAD}\nF2-R1,F2,demo-250A-3PN,left,61;;34`,
      { row: 2, column: 'leg lengths', problem: 'A part between two semicolons is empty.' },
    ],
    [
      'half a start',
      `${HEAD},x,y,z\n${GOOD},1,2,`,
      { row: 2, column: 'z', problem: 'z is empty, though the start has another coordinate.' },
    ],
    [
      'a feed that says too little',
      `${HEAD},feed\n${GOOD},tee F1-R01-A`,
      { row: 2, column: 'feed', remedy: expect.stringContaining('tee F1-R01-A @') },
    ],
    [
      'a feed from a run that is not there',
      `${HEAD},feed\n${GOOD},tee F9 @ 5 left`,
      { row: 2, column: 'feed', problem: 'There is no run "F9".' },
    ],
    [
      'a tee past the end of its run',
      `${HEAD},feed\n${GOOD},tee F1-R01-A @ 71 left`,
      { row: 2, column: 'feed', problem: expect.stringContaining('ends at 21,336 mm') },
    ],
    [
      'a label with a line break',
      `${HEAD}\n"F2\nR1",F2,demo-250A-3PN,left,70`,
      { row: 2, column: 'run', problem: expect.stringContaining('cannot be kept') },
    ],
    [
      'a label that is too long',
      `${HEAD}\n${'x'.repeat(65)},F2,demo-250A-3PN,left,70`,
      { row: 2, column: 'run', problem: expect.stringContaining('at most 64') },
    ],
  ])('%s', (_what, text, fault) => {
    expect(readRuns(text, listJob())).toMatchObject({ ok: false, faults: [fault] });
  });
});
