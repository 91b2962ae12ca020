import { describe, expect, test } from 'vitest';
import { type Fault, parseJobDocument } from '../../src/document/job-document.ts';
import { changed } from './change.ts';
import { fullDocument } from './full-document.ts';

function faultsOf(input: unknown): readonly Fault[] {
  const parsed = parseJobDocument(input);
  return parsed.ok ? [] : parsed.faults;
}

describe('a document that passes', () => {
  test('comes back as it went in, nothing rounded, added or left out', () => {
    const parsed = parseJobDocument(fullDocument());
    expect(parsed).toEqual({ ok: true, document: fullDocument() });
  });

  test('needs nothing that the contract calls optional', () => {
    const least = {
      format: 'busway-jobbook/1',
      project: {
        number: '1',
        name: 'Least',
        units: 'metric',
        currency: 'EUR',
        codeBasis: 'IEC',
        frequencyHz: 50,
        voltageLL: 400,
        voltageLN: 230,
      },
      levels: [],
      buswayTypes: [],
      runs: [],
    };
    expect(parseJobDocument(least)).toEqual({ ok: true, document: least });
  });

  test.each([
    ['project.voltageLN', 208 / Math.sqrt(3) / 1.0099],
    ['runs[0].side', null],
    ['runs[0].end.reachMm', 11_125],
    ['runs[0].crossings[0].atMm', 18_288 + 11_125],
    ['runs[0].noJoint[0].toMm', 1000],
    ['runs[2].feed.atMm', 6096],
    ['buswayTypes[0].factoryCut', null],
    ['buswayTypes[0].factoryCut.stepMm', 0.0125],
    ['buswayTypes[0].factoryCut.stepMm', 25.4],
    ['labourBook.activities.section.low', 0.6],
    ['runs[0].taps[0].powerFactor', 1],
    ['runs[0].taps[0].thirdHarmonic', 1],
    ['runs[0].taps[0].loadVA', 0],
    ['runs[1].feed.atMm', 0],
  ])('%s may be %s, at its limit', (path, value) => {
    expect(faultsOf(changed(fullDocument(), path, value))).toEqual([]);
  });
});

describe('one thing wrong is refused at its path, with what to do', () => {
  test.each([
    ['format', 'busway-jobbook/2', 'format', 'its format is "busway-jobbook/2"', 'Export the job again'],
    ['project.units', 'feet', 'project.units', 'it can be "ft-in" or "metric"', 'Write one of these'],
    ['project.units', 'FT-IN', 'project.units', 'units is "FT-IN"', 'Did you mean "ft-in"?'],
    ['project.currency', 'usd', 'project.currency', 'currency is "usd"', 'three capital letters'],
    ['project.currency', 'UDS', 'project.currency', 'not a currency of ISO 4217', 'USD'],
    ['project.timeZone', 'Chicago', 'project.timeZone', 'not a time zone', 'America/Chicago'],
    ['project.voltageLN', 208, 'project.voltageLN', '120.1 V line to neutral', '208 goes with 120'],
    ['project.voltageLN', 118.8, 'project.voltageLN', 'may differ by 1 %', 'Correct one of the two'],
    ['project.name', '', 'project.name', 'name is empty', 'what the job is called'],
    ['project.site', 'x'.repeat(201), 'project.site', '201 characters; at most 200', 'Shorten it'],
    ['project.client', 'a\u0000b', 'project.client', 'a character that cannot be kept', 'control characters'],
    ['project.volts', 208, 'project.volts', '"volts" is not a key', 'Known keys here'],
    ['levels[1].order', 1, 'levels[1].order', 'and so has level "F1"', 'its own place'],
    ['levels[0].order', 1.5, 'levels[0].order', 'must be a whole number', 'without a fraction'],
    ['levels[0].name', undefined, 'levels[0].name', 'name is missing', 'Give name'],
    ['levels[0].name', null, 'levels[0].name', 'name is null', 'left out'],
    [
      'levels[0].conditions.congestion',
      'busy',
      'levels[0].conditions.congestion',
      '"open", "normal" or "tight"',
      'Write one',
    ],
    [
      'buswayTypes[0].ratedCurrentA',
      '225',
      'buswayTypes[0].ratedCurrentA',
      'must be a number',
      'without quotation marks',
    ],
    ['buswayTypes[0].ratedCurrentA', 0, 'buswayTypes[0].ratedCurrentA', 'must be more than 0', 'Give ratedCurrentA'],
    ['buswayTypes[0].ratedCurrentA', Number.NaN, 'buswayTypes[0].ratedCurrentA', 'is NaN', 'Give ratedCurrentA'],
    [
      'buswayTypes[0].phaseOhmPerKm.r',
      Number.POSITIVE_INFINITY,
      'buswayTypes[0].phaseOhmPerKm.r',
      'is Infinity',
      'Give r',
    ],
    [
      'buswayTypes[0].neutralOhmPerKm',
      undefined,
      'buswayTypes[0].neutralOhmPerKm',
      'has a double neutral',
      'from the sheet',
    ],
    ['buswayTypes[0].stockLengthsMm', [], 'buswayTypes[0].stockLengthsMm', 'an empty list', 'at least 1'],
    [
      'buswayTypes[0].stockLengthsMm[1]',
      0,
      'buswayTypes[0].stockLengthsMm[1]',
      'Entry 2 of stockLengthsMm is 0',
      'a stock length',
    ],
    ['buswayTypes[0].stockLengthsMm[1]', -3048, 'buswayTypes[0].stockLengthsMm[1]', '-3,048', 'a stock length'],
    ['buswayTypes[0].factoryCut', undefined, 'buswayTypes[0].factoryCut', 'is missing', 'null when there are none'],
    ['buswayTypes[0].factoryCut.minMm', 4000, 'buswayTypes[0].factoryCut.minMm', 'longer than the longest', 'swapped'],
    [
      'buswayTypes[0].factoryCut.stepMm',
      0.02,
      'buswayTypes[0].factoryCut.stepMm',
      'multiple of 0.0125',
      'nearest step is 0.025',
    ],
    ['buswayTypes[0].poles', 7, 'buswayTypes[0].poles', 'at most 4', 'phase conductors'],
    ['buswayTypes[0].prices.tap', 12.5, 'buswayTypes[0].prices.tap', 'whole number', '12.50 is 1250'],
    ['buswayTypes[0].prices.tap', -5, 'buswayTypes[0].prices.tap', 'at least 0', 'one tap-off'],
    ['runs[0].level', 'F3', 'runs[0].level', 'There is no level "F3"', '"F1" or "F2"'],
    ['runs[0].type', 'demo-225a-3pn', 'runs[0].type', 'There is no busway type', 'Did you mean "demo-225A-3PN"?'],
    ['runs[0].pairedRun', 'F1-R1-A', 'runs[0].pairedRun', 'is paired with itself', 'other side'],
    ['runs[0].pairedRun', 'F9', 'runs[0].pairedRun', 'There is no run "F9"', 'Add the run'],
    ['runs[1].pairedRun', 'F2-R2', 'runs[0].pairedRun', 'which is paired with "F2-R2"', 'let each name the other'],
    ['runs[0].taps[1].id', 'T1', 'runs[0].taps[1].id', 'A second tap is called "T1"', 'another label'],
    ['runs[0].id', ' F1', 'runs[0].id', 'begins or ends with a blank', 'Take out blanks'],
    ['runs[0].side', 'A-side', 'runs[0].side', 'it can be "A" or "B"', 'Did you mean "A"?'],
    ['runs[0].side', 'L1', 'runs[0].side', 'it can be "A" or "B"', 'are phases'],
    ['runs[0].legs', [], 'runs[0].legs', 'an empty list', 'at least 1'],
    ['runs[0].legs[1].turn', 'left', 'runs[0].legs[1].turn', 'no leg follows', '"none"'],
    ['runs[0].legs[0].lengthMm', -18_288, 'runs[0].legs[0].lengthMm', 'more than 0', 'did you mean 18,288?'],
    ['runs[0].legs[0].lengthMm', 21_336 * 304.8, 'runs[0].legs[0].lengthMm', 'at most 1,000,000', '21,336 mm = 70 ft'],
    ['runs[0].legs[0].length', 5, 'runs[0].legs[0].length', 'not a key that is known', 'Did you mean "lengthMm"?'],
    ['runs[0].end.reachMm', 11_126, 'runs[0].end.reachMm', 'hard stop is at 11,125 mm', 'swapped'],
    ['runs[0].crossings[0].atMm', 29_414, 'runs[0].crossings[0].atMm', 'ends at 29,413 mm', 'Measure along'],
    ['runs[0].noJoint[0].fromMm', 1501, 'runs[0].noJoint[0].fromMm', 'ends before that', 'swapped'],
    ['runs[0].fieldHold.sections[0].fromMm', 1600, 'runs[0].fieldHold.sections[0].fromMm', 'ends at 1,524', 'swapped'],
    ['runs[0].fieldHold.sections[1].fromMm', 1500, 'runs[0].fieldHold.sections[1].fromMm', 'ends at 1,524', 'in order'],
    [
      'runs[0].noSupport[0].toMm',
      52_000,
      'runs[0].noSupport[0].toMm',
      'The end of the zone is at 52,000 mm',
      'Measure along',
    ],
    ['runs[0].structure.kind', 'beams', 'runs[0].structure.kind', '"continuous" or "grid"', 'Write one'],
    ['runs[0].structure.pitchMm', 0, 'runs[0].structure.pitchMm', 'at least 10', 'Give pitchMm'],
    ['runs[0].feed.kind', 'center', 'runs[0].feed.kind', '"end", "centre" or "tee"', 'Did you mean "centre"?'],
    ['runs[0].feed.atMm', 99_000, 'runs[0].feed.atMm', 'The centre feed is at 99,000 mm', 'Measure along'],
    ['runs[0].feed.fromRun', 'F2-R2', 'runs[0].feed.fromRun', 'does not come from a run', '"tee"'],
    ['runs[1].feed.atMm', 500, 'runs[1].feed.atMm', 'stands at 0, but atMm is 500', '"centre"'],
    ['runs[2].feed.fromRun', undefined, 'runs[2].feed.fromRun', 'has no fromRun', 'the tee stands in'],
    ['runs[2].feed.atMm', undefined, 'runs[2].feed.atMm', 'has no atMm', 'along that run'],
    ['runs[2].feed.branchSide', undefined, 'runs[2].feed.branchSide', 'has no branchSide', 'left or right'],
    ['runs[2].feed.fromRun', 'F2-R2', 'runs[2].feed.fromRun', 'is fed from itself', 'its tee stands in'],
    ['runs[2].feed.fromRun', 'F1-R1-C', 'runs[2].feed.fromRun', 'There is no run "F1-R1-C"', 'Did you mean "F1-R1-A"?'],
    ['runs[2].feed.atMm', 6097, 'runs[2].feed.atMm', 'run "F1-R1-B" ends at 6,096 mm', 'Measure along'],
    ['runs[0].taps[0].atMm', undefined, 'runs[0].taps[0].atMm', 'neither atMm nor near', 'Give its distance'],
    ['runs[0].taps[0].near', { xMm: 0, yMm: 0 }, 'runs[0].taps[0].near', 'both atMm and near', 'Keep one'],
    ['runs[0].taps[0].loadVA', undefined, 'runs[0].taps[0].loadVA', 'neither loadVA nor loadA', 'in VA, or in amperes'],
    ['runs[0].taps[0].loadA', 20, 'runs[0].taps[0].loadA', 'both loadVA and loadA', 'Keep one'],
    ['runs[0].taps[0].powerFactor', 98, 'runs[0].taps[0].powerFactor', 'powerFactor is 98', 'Did you mean 0.98?'],
    ['runs[0].taps[0].powerFactor', 0, 'runs[0].taps[0].powerFactor', 'more than 0', 'power factor'],
    ['runs[0].taps[0].thirdHarmonic', 33, 'runs[0].taps[0].thirdHarmonic', 'at most 1', 'Did you mean 0.33?'],
    ['runs[0].taps[0].phases', 'A', 'runs[0].taps[0].phases', 'phases is "A"', 'A-side or phase L1?'],
    ['runs[0].taps[0].phases', 'L1L2', 'runs[0].taps[0].phases', 'phases is "L1L2"', 'Did you mean "L1-L2"?'],
    ['runs[0].taps[0].fixed', 'yes', 'runs[0].taps[0].fixed', 'must be true or false', 'may not move'],
    ['runs[0].taps[0]', 'T1', 'runs[0].taps[0]', 'Entry 1 of taps is "T1"', 'a tap-off'],
    ['runs[0].start.xMm', 27_000_000, 'runs[0].start.xMm', 'at most 26,843,545', 'millimetres'],
    ['extras[0].level', 'F7', 'extras[0].level', 'There is no level "F7"', '"F1" or "F2"'],
    [
      'labourBook.activities.section.low',
      0.7,
      'labourBook.activities.section.low',
      '0.7, are more than the likely',
      'at most likely',
    ],
    [
      'labourBook.activities.section.high',
      0.5,
      'labourBook.activities.section.high',
      'are more than the high',
      'at least likely',
    ],
    [
      'labourBook.activities.section.bands[0].low',
      1,
      'labourBook.activities.section.bands[0].low',
      'Band 1 of "section"',
      'at most likely',
    ],
    [
      'labourBook.activities.section.bands[1].upToMm',
      3048,
      'labourBook.activities.section.bands[1].upToMm',
      'stands here twice',
      'Keep',
    ],
    [
      'labourBook.activities.section.bands[1]',
      { low: 1, likely: 1, high: 1 },
      'labourBook.activities.section.bands[1].upToMm',
      'neither a length nor a rated current',
      'upToA or both',
    ],
    [
      'labourBook.activities.section.bands[1].upToA',
      250,
      'labourBook.activities.section.bands[0].upToA',
      'Band 1 of "section" has no rated current',
      'take it off the others',
    ],
    ['labourBook.factors.height[1].overMm', 4572, 'labourBook.factors.height[1].overMm', 'stands here twice', 'Keep'],
    ['labourBook.learning.rate', 95, 'labourBook.learning.rate', 'at most 1', 'Did you mean 0.95?'],
    ['labourBook.crew[0].effectiveness', 0, 'labourBook.crew', 'no hour of theirs is productive', '1 for a journeyman'],
    ['bid.profit.percent', 100, 'bid.profit.percent', 'A margin of 100 %', '"markup"'],
    ['bid.contingencyP', 100, 'bid.contingencyP', 'less than 100', 'P80'],
    ['bid.materials', 1.5, 'bid.materials', 'whole number', '12.50 is 1250'],
  ])('%s = %j', (path, value, faultPath, message, remedy) => {
    const faults = faultsOf(changed(fullDocument(), path, value));
    expect(faults.map((fault) => fault.path)).toEqual([faultPath]);
    expect(faults[0]?.message).toContain(message);
    expect(faults[0]?.remedy).toContain(remedy);
  });

  test.each([[null], [undefined], [[]], ['text'], [5]])('%j is no document', (input) => {
    expect(faultsOf(input)).toEqual([{ path: '', message: expect.any(String), remedy: expect.any(String) }]);
  });

  test('an activity with an empty name is refused as a key', () => {
    const activity = { unit: 'each', low: 1, likely: 1, high: 1, factors: [] };
    expect(faultsOf(changed(fullDocument(), 'labourBook.activities', { '': activity }))).toMatchObject([
      { path: 'labourBook.activities[""]', message: '"" cannot be the name of an entry.' },
    ]);
  });
});

describe('all faults at once', () => {
  test('faults of shape and of sense come together, in the order of their paths', () => {
    const [first, ...rest] = fullDocument().runs;
    const broken = {
      ...fullDocument(),
      runs: [
        { ...first, level: 'F3', conductorSide: 'both', taps: [{ id: 'T1', phases: 'L1', deviceA: -1 }] },
        ...rest,
      ],
    };
    expect(faultsOf(broken).map((fault) => fault.path)).toEqual([
      'runs[0].conductorSide',
      'runs[0].level',
      'runs[0].taps[0].atMm',
      'runs[0].taps[0].deviceA',
      'runs[0].taps[0].loadVA',
    ]);
  });

  test('a wrong value is not also called missing', () => {
    const faults = faultsOf(changed(fullDocument(), 'runs[0].taps[0].atMm', '1600'));
    expect(faults).toMatchObject([{ path: 'runs[0].taps[0].atMm', remedy: 'Write 1600 without quotation marks.' }]);
  });

  test('what is pasted twice is told where it stood first', () => {
    const { levels, buswayTypes, runs } = fullDocument();
    const twice = {
      ...fullDocument(),
      levels: [...levels, levels[0]],
      buswayTypes: [...buswayTypes, ...buswayTypes],
      runs: [...runs, runs[1]],
    };
    expect(faultsOf(twice)).toMatchObject([
      {
        path: 'buswayTypes[1].id',
        message: 'A second busway type is called "demo-225A-3PN"; the first is buswayTypes[0].',
      },
      { path: 'levels[2].id', message: 'A second level is called "F1"; the first is levels[0].' },
      { path: 'levels[2].order', message: 'Level "F1" has order 1, and so has level "F1".' },
      { path: 'runs[3].id', message: 'A second run is called "F1-R1-B"; the first is runs[1].' },
    ]);
  });

  test('a list that is missing is one fault, not one for each that names something in it', () => {
    expect(faultsOf(changed(fullDocument(), 'levels', undefined)).map((fault) => fault.path)).toEqual(['levels']);
  });

  test('two runs that feed each other are both told', () => {
    const circle = { kind: 'tee', fromRun: 'F2-R2', atMm: 1000, branchSide: 'left' };
    const faults = faultsOf(changed(fullDocument(), 'runs[1].feed', circle));
    expect(faults.map((fault) => fault.path)).toEqual(['runs[1].feed.fromRun', 'runs[2].feed.fromRun']);
    expect(faults[0]?.message).toContain('feed one another in a circle');
  });

  test('the caller’s value is left alone', () => {
    const input = changed(fullDocument(), 'runs[0].level', 5);
    const before = structuredClone(input);
    parseJobDocument(input);
    expect(input).toEqual(before);
  });
});

describe('sizes that no job has', () => {
  test('ten thousand runs that feed one another in a circle are all told, and soon', () => {
    const count = 10_000;
    const run = fullDocument().runs[1];
    const runs = Array.from({ length: count }, (_, i) => ({
      ...run,
      id: `R${i}`,
      feed: { kind: 'tee', fromRun: `R${(i + 1) % count}`, atMm: 3000, branchSide: 'left' },
    }));
    const faults = faultsOf(changed(fullDocument(), 'runs', runs));
    expect(faults).toHaveLength(count);
    expect(faults[0]?.message).toContain('and 9,992 more feed one another in a circle');
  });

  test('ten thousand branches one on the other are followed to their source', () => {
    const run = fullDocument().runs[1];
    const tee = (i: number) => ({ kind: 'tee', fromRun: `R${i - 1}`, atMm: 3000, branchSide: 'left' });
    const runs = Array.from({ length: 10_000 }, (_, i) => ({ ...run, id: `R${i}`, ...(i > 0 && { feed: tee(i) }) }));
    expect(faultsOf(changed(fullDocument(), 'runs', runs))).toEqual([]);
  });

  test('more runs than are read', () => {
    const run = fullDocument().runs[1];
    const faults = faultsOf(
      changed(
        fullDocument(),
        'runs',
        Array.from({ length: 50_001 }, () => run),
      ),
    );
    expect(faults).toMatchObject([
      { path: 'runs', message: expect.stringContaining('50,001 entries; at most 50,000') },
    ]);
  });

  test('stock lengths so short that a run would take thousands of them', () => {
    const faults = faultsOf(changed(fullDocument(), 'buswayTypes[0].stockLengthsMm', [1]));
    expect(faults).toMatchObject([
      { path: 'runs[0].legs', message: expect.stringContaining('more than 10,000 sections') },
    ]);
  });

  test('a cut step so fine that there are more lengths than can be tried', () => {
    const cut = { minMm: 1, maxMm: 100_000, stepMm: 0.0125 };
    expect(faultsOf(changed(fullDocument(), 'buswayTypes[0].factoryCut', cut))).toMatchObject([
      { path: 'buswayTypes[0].factoryCut.stepMm' },
    ]);
  });

  test('legs that add up to more than a length can hold', () => {
    const legs = Array.from({ length: 30 }, () => ({ lengthMm: 1_000_000, turn: 'none' }));
    const faults = faultsOf(
      changed(changed(fullDocument(), 'runs[1].legs', legs), 'buswayTypes[0].stockLengthsMm', [3048]),
    );
    expect(faults).toMatchObject([{ path: 'runs[1].legs', message: expect.stringContaining('30,000,000 mm') }]);
  });
});
