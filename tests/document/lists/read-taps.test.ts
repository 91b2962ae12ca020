import { describe, expect, test } from 'vitest';
import { feet } from '../../../src/document/demo/feet.ts';
import { readTaps } from '../../../src/document/lists/read-taps.ts';
import { withTaps } from '../../../src/document/lists/with-list.ts';
import { listJob } from './list-job.ts';

const HEAD = 'run,tap,at,phases,neutral,device,load VA,load A,pf,serves,pair';

function read(...rows: string[]) {
  return readTaps([HEAD, ...rows].join('\n'), listJob());
}

describe('a clean list', () => {
  const rows = [
    `F1-R01-A,T2,"5'-3""",l1,,30,"4,200",,0.95,rack 12,R12`,
    'F1-R01-A,T3,2667 mm,L2/L1,yes,30 A,4.2 kVA,,95 %,,',
    'F1-R01-A,T4,12.25,L1-L2-L3,no,20,,12 A,,,',
    `F1-R01-A,T5,"near 12'-0""; -8'-6""",L3,,20,,0,1,,`,
  ];

  test('is read into taps of runs', () => {
    expect(read(...rows)).toMatchObject({
      ok: true,
      made: [
        {
          run: 'F1-R01-A',
          tap: {
            id: 'T2',
            atMm: feet(5.25),
            phases: 'L1',
            deviceA: 30,
            loadVA: 4200,
            powerFactor: 0.95,
            serves: 'rack 12',
            pair: 'R12',
          },
        },
        { tap: { id: 'T3', atMm: 2667, phases: 'L1-L2', neutral: true, deviceA: 30, loadVA: 4200, powerFactor: 0.95 } },
        { tap: { id: 'T4', atMm: feet(12.25), phases: 'L1-L2-L3', neutral: false, deviceA: 20, loadA: 12 } },
        {
          tap: {
            id: 'T5',
            near: { xMm: feet(12), yMm: -feet(8.5) },
            phases: 'L3',
            deviceA: 20,
            loadA: 0,
            powerFactor: 1,
          },
        },
      ],
      questions: [],
    });
  });

  test('says beforehand what it will make', () => {
    expect(read(...rows)).toMatchObject({
      preview: {
        taps: 4,
        levels: [{ level: 'F1', taps: 4 }],
        runs: [{ run: 'F1-R01-A', taps: 4 }],
        first: [{}, {}, {}, {}],
      },
    });
  });

  test('follows the taps that the run has', () => {
    const result = read(...rows);
    const job = withTaps(listJob(), result.ok ? result.made : []);
    expect(job.runs[0]?.taps?.map((tap) => tap.id)).toEqual(['T1', 'T2', 'T3', 'T4', 'T5']);
    expect(listJob().runs[0]?.taps).toHaveLength(1);
  });

  test('needs no column that may be empty', () => {
    expect(readTaps('Run\tTap\tAt\tPhase\tDevice\tVA\nF1-R01-A\tT2\t5.25\tL1\t30\t2000', listJob())).toMatchObject({
      ok: true,
    });
  });

  test('of 10.6 for ten feet six is taken as typed, and asked about', () => {
    expect(read('F1-R01-A,T2,10.6,L1,,30,2000,,,,')).toMatchObject({
      ok: true,
      questions: [{ row: 2, column: 'at', value: '10.6', problem: expect.stringContaining(`Did you mean 10'-6"?`) }],
    });
  });
});

describe('a bad cell is told with its row, its column and what to do', () => {
  test.each([
    [
      'a run that is not there',
      'F1-R01-B,T2,5.25,L1,,30,2000,,,,',
      'run',
      'The job has no run "F1-R01-B".',
      'Did you mean F1-R01-A?',
    ],
    [
      'a tap that the run has',
      'F1-R01-A,T1,5.25,L1,,30,2000,,,,',
      'tap',
      'Run F1-R01-A already has tap T1.',
      'another label',
    ],
    ['millimetres among feet', 'F1-R01-A,T2,5800,L1,,30,2000,,,,', 'at', '5,800 ft is 1.1 miles', '5,800 mm = 19.0 ft'],
    [
      'a place past the end',
      'F1-R01-A,T2,71 ft,L1,,30,2000,,,,',
      'at',
      `71 ft is more than 70'-0"`,
      `Give a length from 0" to 70'-0"`,
    ],
    ['A for a phase', 'F1-R01-A,T2,5.25,A,,30,2000,,,,', 'phases', 'could be a feed side', 'A-side or phase L1?'],
    [
      'ABC for three phases',
      'F1-R01-A,T2,5.25,A-B-C,,30,2000,,,,',
      'phases',
      'could be a feed side',
      'Phases are L1, L2 and L3',
    ],
    ['L4 for a phase', 'F1-R01-A,T2,5.25,L4,,30,2000,,,,', 'phases', 'does not name phases', 'L1-L2'],
    ['a power factor of 98', 'F1-R01-A,T2,5.25,L1,,30,2000,,98,,', 'pf', 'from 0 to 1, not 98', 'Did you mean 0.98?'],
    ['a power factor of 0', 'F1-R01-A,T2,5.25,L1,,30,2000,,0,,', 'pf', 'from 0 to 1, not 0', '0.95'],
    ['kVA in the VA column', 'F1-R01-A,T2,5.25,L1,,30,4.2,,,,', 'load VA', '4.2 VA is next to nothing', 'write 4,200'],
    ['kW in the VA column', 'F1-R01-A,T2,5.25,L1,,30,9.6 kW,,,,', 'load VA', 'power in watts', 'power factor'],
    ['two loads', 'F1-R01-A,T2,5.25,L1,,30,2000,9,,,', 'load A', 'a load in VA and one in amperes', 'Keep one'],
    ['no load', 'F1-R01-A,T2,5.25,L1,,30,,,,,', 'load VA', 'The tap has no load.', 'in VA, or in amperes'],
    ['a negative load', 'F1-R01-A,T2,5.25,L1,,30,-5,,,,', 'load VA', 'loadVA is -5; it must be at least 0', 'Give'],
    ['no device', 'F1-R01-A,T2,5.25,L1,,,2000,,,,', 'device', 'device is empty', 'Fill the cell'],
    ['a device that is none', 'F1-R01-A,T2,5.25,L1,,big,2000,,,,', 'device', '"big" is not a number', '30'],
    ['a device of 0', 'F1-R01-A,T2,5.25,L1,,0,2000,,,,', 'device', 'must be more than 0', 'Give'],
    [
      'a neutral that is neither',
      'F1-R01-A,T2,5.25,L1,maybe,30,2000,,,,',
      'neutral',
      'neither yes nor no',
      'Write yes, no',
    ],
    ['a formula', 'F1-R01-A,T2,=A1+3.5,L1,,30,2000,,,,', 'at', 'The cell holds a formula.', 'Paste its value'],
    ['half a place', "F1-R01-A,T2,near 12'-0,L1,,30,2000,,,,", 'at', 'cannot be read as a length', 'Write it like'],
  ])('%s', (_what, row, column, problem, remedy) => {
    expect(read(row)).toMatchObject({
      ok: false,
      faults: [{ row: 2, column, problem: expect.stringContaining(problem), remedy: expect.stringContaining(remedy) }],
    });
  });

  test('a tap twice is told with the row it stood in first', () => {
    const twice = 'F1-R01-A,T2,5.25,L1,,30,2000,,,,';
    expect(read(twice, ',,,,,,,,,,', twice)).toMatchObject({
      ok: false,
      faults: [{ row: 4, column: 'tap', problem: 'Tap T2 of run F1-R01-A stands in row 2 already.' }],
    });
  });

  test('nothing is made while one row is wrong', () => {
    const result = read('F1-R01-A,T2,5.25,L1,,30,2000,,,,', 'F1-R01-A,T3,8.75,A,,30,2000,,98,,');
    expect(result).toMatchObject({
      ok: false,
      faults: [
        { row: 3, column: 'phases' },
        { row: 3, column: 'pf' },
      ],
    });
    expect(result).not.toHaveProperty('made');
  });
});
