import { describe, expect, it, test } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { feet } from '../../src/document/demo/feet.ts';
import type { JobDocument, RunDocument } from '../../src/document/job-document.ts';
import { parseJobDocument } from '../../src/document/parse-job-document.ts';
import { readRunForm } from '../../src/document/run-form/read-run-form.ts';
import { writeRunForm } from '../../src/document/run-form/write-run-form.ts';
import { toModel } from '../../src/document/to-model.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';

// What a person types wrong into a run's form, and what is said beside the field: what is wrong, the number, what to do.

const demo: JobDocument = { ...demoJob(), runs: demoJob().runs.slice(0, 2) };
const [run] = demo.runs as [RunDocument, RunDocument];

interface Said {
  /** Beside each field, in the order in which they are found: of the reading first, then of the job document's check. */
  readonly beside: readonly string[];
  readonly questions: readonly string[];
  readonly taps: readonly string[];
  readonly run: RunDocument;
}

function typed(change: Readonly<Record<string, string>>, units: 'ft-in' | 'metric' = 'ft-in'): Said {
  const job = { ...demo, project: { ...demo.project, units } };
  const read = readRunForm({ ...writeRunForm(run, job.project), taps: '', ...change }, job, { ...run, taps: [] });
  const parsed = parseJobDocument({ ...job, runs: [read.run, ...job.runs.slice(1)] });
  const inRun = (path: string) => read.fieldOf(path.replace(/^runs\[0\]\.?/, ''));
  const checked = parsed.ok ? [] : parsed.faults.map((fault) => ({ ...fault, field: inRun(fault.path) }));
  const alreadyTold = new Set(read.faults.map(({ field }) => field));
  return {
    beside: [
      ...read.faults.map(({ field, said }) => `${field}: ${said}`),
      ...checked
        .filter(({ field }) => !alreadyTold.has(field))
        .map(({ field, message, remedy }) => `${field}: ${message} ${remedy}`),
    ],
    questions: read.questions.map(({ field, said }) => `${field}: ${said}`),
    taps: read.tapFaults.map(({ row, column, problem, remedy }) => `${row} ${column}: ${problem} ${remedy}`),
    run: read.run,
  };
}

const lengthOf = (said: Said) => said.run.legs[0]?.lengthMm;

describe('1: a length of 10.6 typed for 10 ft 6 in', () => {
  it('is taken as decimal feet and asked about beside its field', () => {
    const said = typed({ 'legs[0].lengthMm': '10.6' });
    expect(said.beside).toEqual([]);
    expect(said.questions).toEqual([`legs[0].lengthMm: 10.6 ft is 10'-7 3/16". Did you mean 10'-6"?`]);
    // 10.6 × 304.8 = 3 230.88 mm, kept to the nearest 1/80 mm.
    expect(lengthOf(said)).toBe(3230.875);
  });

  it(`is 10 ft 6 in when that is typed instead, and nothing is asked`, () => {
    const said = typed({ 'legs[0].lengthMm': `10'-6"` });
    expect([said.questions, lengthOf(said)]).toEqual([[], feet(10.5)]);
    expect(typed({ 'legs[0].lengthMm': '10.5' }).questions).toEqual([]);
  });
});

describe('2: millimetres typed into a box of feet', () => {
  it('are four miles, and the reading in millimetres is offered', () => {
    expect(typed({ 'legs[0].lengthMm': '21336' }).beside).toEqual([
      'legs[0].lengthMm: 21,336 ft is 4 miles. 21,336 mm = 70.0 ft. If you meant millimetres, write 21336 mm.',
    ]);
  });

  it('are 70 ft when written as offered', () => {
    const said = typed({ 'legs[0].lengthMm': '21336 mm' });
    expect([said.beside, lengthOf(said)]).toEqual([[], feet(70)]);
  });

  it('and metres in a box of millimetres are told likewise', () => {
    expect(typed({ 'legs[0].lengthMm': '21.336' }, 'metric').beside).toEqual([
      'legs[0].lengthMm: 21.336 mm is less than 0.100 m, the least here. 21.336 m = 21.336 m. If you meant metres, write 21.336 m.',
    ]);
    expect(lengthOf(typed({ 'legs[0].lengthMm': '21.336 m' }, 'metric'))).toBe(feet(70));
  });
});

describe('what else a person would try', () => {
  test.each<[string, Readonly<Record<string, string>>, readonly string[]]>([
    [
      'a negative length',
      { 'legs[0].lengthMm': '-70' },
      ['legs[0].lengthMm: -70 ft is negative; a length here is not. Did you mean 70 ft?'],
    ],
    [
      'text that is no number',
      { 'legs[0].lengthMm': 'NaN' },
      [`legs[0].lengthMm: This cannot be read as a length. Write it like 12'-6 1/2", 12.5 ft or 3810 mm.`],
    ],
    [
      'no legs at all',
      { 'legs[0].lengthMm': '' },
      ['legs: legs is an empty list. Give at least 1: legs: the straight legs in order from the feed.'],
    ],
    [
      'a leg of nought',
      { 'legs[0].lengthMm': '0' },
      [`legs[0].lengthMm: 0 ft is less than ≈3 15/16", the least here. Give a length from ≈3 15/16" to ≈984'-3".`],
    ],
    [
      'a pitch of nought',
      { 'structure.kind': 'grid', 'structure.pitchMm': '0', 'structure.offsetMm': '0' },
      [`structure.pitchMm: 0 ft is less than ≈1/16", the least here. Give a length from ≈1/16" to ≈3280'-10 1/16".`],
    ],
    [
      'a grid without a pitch',
      { 'structure.kind': 'grid', 'structure.pitchMm': '' },
      ['structure.pitchMm: pitchMm is missing. Give pitchMm: distance between the lines that can carry a support, mm.'],
    ],
    [
      'half of a start',
      { 'start.xMm': '5 ft', 'start.yMm': '', 'start.zMm': '10 ft' },
      ['start.yMm: yMm is missing. Give yMm: north of the origin, mm.'],
    ],
    ['a heading in words', { headingDeg: 'north' }, ['headingDeg: "north" is not a number. Write it like 225 or 0.2.']],
    [
      'a heading past the full circle',
      { headingDeg: '400' },
      [
        'headingDeg: headingDeg is 400; it must be at most 360. Give headingDeg: heading of the first leg: 0 is +x (east), 90 is +y (north).',
      ],
    ],
    [
      'a wall past the end',
      { 'crossings[0].atMm': '100 ft', 'crossings[0].thicknessMm': '8"', 'crossings[0].kind': 'wall' },
      [
        'crossings[0].atMm: The wall is at 30,480 mm, but run "F1-R01-A" ends at 21,336 mm. ' +
          'Measure along the centre line from the feed, in millimetres; or lengthen the run.',
      ],
    ],
    [
      'a wall without a thickness',
      { 'crossings[0].atMm': '10 ft', 'crossings[0].thicknessMm': '', 'crossings[0].kind': 'wall' },
      ['crossings[0].thicknessMm: thicknessMm is missing. Give thicknessMm: thickness along the run, mm.'],
    ],
    [
      'a blocked zone that ends before it begins',
      { 'noSupport[0].fromMm': '50', 'noSupport[0].toMm': '40' },
      [
        'noSupport[0].fromMm: The zone begins at 15,240 mm and ends before that, at 12,192 mm. ' +
          'Let fromMm be at most toMm: were the two swapped?',
      ],
    ],
    [
      'an end that stops before it is reached',
      { 'end.reachMm': '72 ft', 'end.hardStopMm': '70 ft' },
      [
        'end.reachMm: The run must reach 21,945.6 mm, but its hard stop is at 21,336 mm. ' +
          'Let reachMm be at most hardStopMm: were the two swapped?',
      ],
    ],
    [
      'a hanger that carries less than nothing',
      { supportCapacityKg: '-150 kg' },
      ['supportCapacityKg: -150 kg is negative; a figure here is not. Did you mean 150 kg?'],
    ],
    [
      'a turn at the end of the last leg',
      { 'legs[0].turn': 'left' },
      [
        'legs[0].turn: The last leg turns left, but no leg follows it. Add the leg after the turn, or write "none" for the turn of the last leg.',
      ],
    ],
  ])('%s', (_what, change, beside) => {
    expect(typed(change).beside).toEqual(beside);
  });

  const heads = 'tap\tat\tphases\tneutral\tdevice\tload VA\tload A\tpf\tserves\tpair\n';
  const tap = (id: string, at: string) => `${id}\t${at}\tL1\tyes\t30\t2520\t\t1\tcabinet ${id}\t\n`;

  it('two tap-offs of one label', () => {
    expect(typed({ taps: heads + tap('T1', `5'-0"`) + tap('T2', `8'-0"`) + tap('T1', `12'-0"`) }).taps).toEqual([
      '4 tap: Tap T1 of run F1-R01-A stands in row 2 already. Give it another label, or take one row out.',
    ]);
  });

  it('a tap-off beyond the end, before the start, or at no place', () => {
    expect(typed({ taps: heads + tap('T1', `75'-0"`) + tap('T2', '-5') + tap('T3', 'NaN') }).taps).toEqual([
      `2 at: 75'-0" is more than 70'-0", the most here. Give a length from 0" to 70'-0".`,
      '3 at: -5 ft is negative; a length here is not. Did you mean 5 ft?',
      `4 at: This cannot be read as a length. Write it like 12'-6 1/2", 12.5 ft or 3810 mm.`,
    ]);
  });

  it('a run without a label, level or type, whose tap-offs are read all the same', () => {
    const said = typed({ id: '', level: '', type: '', pairedRun: '', taps: heads + tap('T1', `5'-0"`) });
    expect(said.beside.filter((line) => !line.startsWith('runs[1]'))).toEqual([
      'id: id is missing. Give id: the run, such as F1-R1-A.',
      'level: level is missing. Give level: the level it hangs on.',
      'type: type is missing. Give type: its busway type.',
    ]);
    expect(said.taps).toEqual([]);
    expect(said.run.taps).toHaveLength(1);
    // With a pair the missing label is asked for, and no run is called undefined.
    expect(typed({ id: '' }).beside.join()).not.toContain('undefined');
  });
});

describe('what can be laid out and was probably not meant', () => {
  const warned = (change: Partial<RunDocument>, rule: string) => {
    const parsed = parseJobDocument({ ...demo, runs: [{ ...run, taps: [], ...change }, ...demo.runs.slice(1)] });
    if (!parsed.ok) throw new Error(parsed.faults[0]?.message);
    return layoutJob(toModel(parsed.document))[0]!.findings.filter((finding) => finding.rule === rule);
  };

  it('a wall that is thicker than the run is long', () => {
    const wall = (thickness: number) => ({
      crossings: [{ atMm: feet(35), thicknessMm: feet(thickness), kind: 'wall' as const }],
    });
    expect(warned(wall(70), 'crossing.thickness')).toEqual([]);
    expect(warned(wall(96), 'crossing.thickness')).toMatchObject([
      {
        severity: 'warning',
        message: `The wall at 35'-0" is 96'-0" thick, more than the 70'-0" that the run is long: enter its thickness along the run, and look at the unit.`,
      },
    ]);
  });

  it('tap-offs placed in plan on a run that states no place', () => {
    const [first] = demoJob().runs[0]?.taps ?? [];
    const near = (id: string) => {
      const { atMm: _at, ...tap } = first!;
      return { ...tap, id, near: { xMm: feet(5), yMm: 0 } };
    };
    const taps = ['T1', 'T2', 'T3', 'T4', 'T5'].map(near);
    expect(warned({ taps }, 'tap.no-start')).toEqual([]);
    expect(warned({ taps, start: undefined }, 'tap.no-start').map(({ message }) => message)).toEqual([
      'Taps T1, T2, T3 and 2 more are placed by the plan position of what they serve, but the run states no start and was ' +
        'taken to begin at the origin: enter where the run begins, or the distance along it.',
    ]);
    expect(warned({ taps: taps.slice(0, 1), start: undefined }, 'tap.no-start')[0]?.message).toMatch(
      /^Tap T1 is placed by the plan position of what it serves, but/,
    );
    expect(warned({ taps: demoJob().runs[0]?.taps, start: undefined }, 'tap.no-start')).toEqual([]);
  });
});
