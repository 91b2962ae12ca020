import { describe, expect, test } from 'vitest';
import { fullDocument } from '../document/full-document.ts';
import {
  aBook,
  aBranch,
  activity,
  aJob,
  aRun,
  aTap,
  aType,
  type Json,
  type JsonObject,
  jobOf,
  leg,
  printed,
  printedText,
  refusals,
} from './job-text.ts';

/** The document of every key, as plain JSON. */
const full = (): JsonObject => JSON.parse(JSON.stringify(fullDocument())) as JsonObject;

/** Keys marked `?` on the page of the job document, by the path of their owner; all other keys are required. */
const OPTIONAL: Readonly<Record<string, readonly string[]>> = {
  '': ['extras', 'labourBook', 'bid'],
  project: [
    ...['client', 'site', 'timeZone', 'codeEdition', 'industrial'],
    ...['voltageDropLimitPercent', 'unbalanceLimitPercent'],
    // Beyond the page: the job's own rules for ordering, all of them optional.
    'ordering',
  ],
  'project.ordering': [
    ...['spares', 'leadDays', 'plan', 'cordStockMm', 'closure', 'washersPerRod', 'braceEverySupports', 'tools'],
  ],
  'project.ordering.spares.0': [
    ...['type', 'kind', 'hand', 'lengthMm', 'wastePercent', 'percent', 'minimum', 'ownerSpares'],
  ],
  'project.ordering.leadDays.0': [],
  'project.ordering.closure': ['wastePercent'],
  'project.ordering.tools.0': ['activity', 'crews', 'note'],
  'levels.0': ['elevationMm', 'structureHeightMm', 'conditions'],
  'levels.0.conditions': ['mountingHeightMm', 'congestion', 'liveArea', 'storeysAboveGrade'],
  'buswayTypes.0': [
    ...['sheet', 'hundredPercentRated', 'shortCircuitCycles', 'feed', 'support', 'tap', 'crossing', 'joint'],
    ...['words', 'prices'],
    // The page marks "fittings" as required and both of its keys as optional; it is accepted when left out.
    'fittings',
  ],
  'buswayTypes.0.sheet': [],
  'buswayTypes.0.phaseOhmPerKm': [],
  'buswayTypes.0.factoryCut': [],
  'buswayTypes.0.feed': ['joins', 'weightKg'],
  'buswayTypes.0.support': [
    ...['maxSpacingMm', 'maxEndOverhangMm', 'jointClearMm', 'stepMm', 'fittingWithinMm', 'source'],
  ],
  'buswayTypes.0.tap': [
    ...['jointClearMm', 'endClearMm', 'minSpacingMm', 'boxLengthMm'],
    // Added to the page's own keys, for runs that face each other.
    ...['boxDepthMm', 'boxHeightMm', 'faceClearMm'],
  ],
  'buswayTypes.0.crossing': ['jointClearMm', 'supportClearMm'],
  'buswayTypes.0.joint': ['clamps', 'contactSets', 'bolts', 'torqueNm', 'steps'],
  'buswayTypes.0.fittings': ['elbow', 'tee'],
  'buswayTypes.0.fittings.elbow': ['weightKg', 'handed'],
  'buswayTypes.0.fittings.tee': ['weightKg', 'handed'],
  'buswayTypes.0.words': ['clamp', 'contactSet', 'seatingTool'],
  'buswayTypes.0.prices': [
    ...['sections', 'sectionPerM', 'cutSurcharge', 'jointKit', 'elbow', 'tee', 'endFeed', 'endCap', 'support'],
    ...['tap', 'drop'],
  ],
  'buswayTypes.0.prices.sections.0': [],
  'runs.0': [
    ...['area', 'side', 'pairedRun', 'start', 'headingDeg', 'end', 'crossings', 'noJoint', 'noSupport'],
    ...['structure', 'dropMm', 'rod', 'rodStockMm', 'attachment', 'supportCapacityKg', 'taps'],
    // Not on the page: what the floor substituted, which an export may not lose.
    'fieldHold',
  ],
  'runs.0.start': [],
  'runs.0.fieldHold': [],
  'runs.0.fieldHold.sections.0': [],
  'runs.0.feed': [
    ...['atMm', 'supply', 'deviceA', 'deviceHundredPercent', 'faultKA', 'xOverR', 'cable', 'terminations'],
  ],
  'runs.0.feed.cable': ['parallel', 'neutralOhmPerKm'],
  'runs.2.feed': [],
  'runs.0.end': [],
  'runs.0.legs.0': ['tapsMustFace'],
  'runs.0.crossings.0': ['fireRatingMin'],
  'runs.0.noJoint.0': ['reason'],
  'runs.0.noSupport.0': ['reason'],
  'runs.0.structure': [],
  'runs.0.taps.0': [
    ...['fixed', 'neutral', 'interruptingKA', 'powerFactor', 'continuous', 'thirdHarmonic', 'movablePhase'],
    ...['serves', 'pair', 'dropMm', 'weightKg'],
  ],
  'runs.0.taps.1.near': [],
  'extras.0': ['level', 'price', 'hours', 'note'],
  labourBook: [
    ...['factors', 'learning', 'nonProductivePercent', 'crew', 'correlation', 'trials', 'seed'],
    // Beyond the page: time lost by the day, what overtime costs, conditions of the whole job.
    ...['nonProductiveDay', 'overtime', 'jobConditions'],
  ],
  'labourBook.jobConditions.0': ['activities'],
  'labourBook.nonProductiveDay': [],
  'labourBook.overtime': ['straightHours', 'premium', 'productivity'],
  'labourBook.activities.section': ['bands', 'factors'],
  'labourBook.activities.section.bands.0': [],
  'labourBook.factors': ['height', 'congestion', 'storeyPercentEach', 'livePercent'],
  'labourBook.factors.height.0': [],
  'labourBook.factors.congestion': [],
  'labourBook.learning': ['activities'],
  'labourBook.crew.0': ['burdenPercent'],
  // Beyond the page: what a bid may hold of cost and of terms, all of it optional.
  bid: [
    ...['materials', 'taxPercent', 'other', 'supervision', 'overheadPercent', 'profit', 'contingencyP'],
    ...['date', 'validUntil', 'estimateClass', 'wastePercent', 'escalationPercent', 'freight', 'consumablesPercent'],
    ...[
      'permit',
      'spares',
      'ownerFurnished',
      'bond',
      'taxes',
      'quotes',
      'timed',
      'subcontracts',
      'alternates',
      'unitPrices',
      'inclusions',
    ],
    ...['exclusions', 'qualifications', 'addenda'],
  ],
  'bid.bond': ['scale'],
  'bid.bond.scale.0': [],
  'bid.taxes.0': [],
  'bid.quotes.0': [
    ...['goesTo', 'date', 'validUntil', 'currency', 'freight', 'freightAmount', 'tax', 'taxAmount', 'firm', 'chosen'],
    'note',
  ],
  'bid.quotes.0.lines.1': ['amount'],
  'bid.timed.0': ['goesTo', 'rate', 'once'],
  'bid.subcontracts.0': ['work', 'amount'],
  'bid.alternates.0': ['materials', 'hours', 'subcontracts', 'other', 'note'],
  'bid.unitPrices.0': ['material', 'offered'],
  'bid.addenda.0': ['date', 'note'],
  'bid.profit': [],
};

const at = (job: JsonObject, path: string): JsonObject =>
  (path === '' ? [] : path.split('.')).reduce<Json>((value, key) => (value as JsonObject)[key]!, job) as JsonObject;
const shown = (path: string) => path.replace(/\.(\d+)/g, '[$1]');

test('the document of every key is sound', () => {
  expect(refusals(full())).toEqual([]);
});

describe.each(Object.entries(OPTIONAL))('keys of "%s"', (path, optional) => {
  const keys = Object.keys(at(full(), path));

  test('"unknown keys are refused with their path"', () => {
    const job = full();
    at(job, path).colour = 'red';
    const faults = refusals(job);
    expect(faults.map((fault) => fault.path)).toEqual([shown(path === '' ? 'colour' : `${path}.colour`)]);
    expect(faults[0]!.remedy).not.toBe('');
  });

  test.each(keys.map((key) => [key, optional.includes(key)] as const))('%s, may be left out: %s', (key, may) => {
    const job = full();
    delete at(job, path)[key];
    const paths = refusals(job).map((fault) => fault.path);
    const own = shown(path === '' ? key : `${path}.${key}`);
    if (may) expect(paths.filter((one) => one.startsWith(own))).toEqual([]);
    else expect(paths.some((one) => one.startsWith(own))).toBe(true);
  });
});

describe('what the page says is refused', () => {
  const paths = (job: JsonObject) => refusals(job).map((fault) => fault.path);

  test('"voltageLN more than 1 % off voltageLL/√3": 400 V is 230.94 V', () => {
    const volts = (voltageLN: number) => paths(aJob({}, { voltageLL: 400, voltageLN }));
    expect(volts(230)).toEqual([]);
    expect(volts(233.24)).toEqual([]);
    expect(volts(228.64)).toEqual([]);
    expect(volts(233.26)).toEqual(['project.voltageLN']);
    expect(volts(228.62)).toEqual(['project.voltageLN']);
  });
  test('"neutralOhmPerKm absent: as phase for full, required for double"', () => {
    expect(paths(jobOf(aType({ neutral: 'double' }), aRun()))).toEqual(['buswayTypes[0].neutralOhmPerKm']);
    expect(paths(jobOf(aType({ neutral: 'full' }), aRun()))).toEqual([]);
    expect(paths(jobOf(aType({ neutral: 'none' }), aRun()))).toEqual([]);
  });
  test('another format, and none', () => {
    expect(paths({ ...aJob(), format: 'busway-jobbook/2' })).toEqual(['format']);
    expect(paths({ ...aJob(), format: 1 })).toEqual(['format']);
  });
  test('a tap has one place and one load', () => {
    const tap = (changes: JsonObject) => paths(jobOf(aType(), aRun({ taps: [{ ...aTap('A', 1000), ...changes }] })));
    expect(tap({ loadVA: 100 })).toHaveLength(1);
    expect(tap({ near: { xMm: 0, yMm: 0 } })).toHaveLength(1);
    expect(tap({ loadA: undefined })).toHaveLength(1);
    expect(tap({ atMm: undefined })).toHaveLength(1);
  });
  test('names of what is not there, and names that stand twice', () => {
    expect(paths(aJob({ runs: [aRun({ level: 'F9' })] }))).toEqual(['runs[0].level']);
    expect(paths(aJob({ runs: [aRun({ type: 'X' })] }))).toEqual(['runs[0].type']);
    expect(paths(aJob({ runs: [aRun({ pairedRun: 'X' })] }))).toEqual(['runs[0].pairedRun']);
    expect(paths(aJob({ runs: [aBranch('B', 'X', 0, 'left')] }))).toEqual(['runs[0].feed.fromRun']);
    expect(paths(aJob({ runs: [aRun(), aRun()] }))).toEqual(['runs[1].id']);
    expect(paths(aJob({ runs: [aRun({ taps: [aTap('A', 1000), aTap('A', 2000)] })] }))).toEqual(['runs[0].taps[1].id']);
  });
  test('branches that feed one another', () => {
    const job = aJob({ runs: [aBranch('B', 'C', 1000, 'left'), aBranch('C', 'B', 1000, 'left')] });
    expect(paths(job)).toEqual(['runs[0].feed.fromRun', 'runs[1].feed.fromRun']);
  });
  test('numbers that are none: text, too great, below nought, not whole', () => {
    expect(paths(aJob({ runs: [aRun({ legs: [leg(-1)] })] }))).toEqual(['runs[0].legs[0].lengthMm']);
    expect(paths(aJob({ runs: [aRun({ legs: [leg(1e300)] })] }))).toEqual(['runs[0].legs[0].lengthMm']);
    expect(paths(aJob({ runs: [aRun({ legs: [{ lengthMm: '6000', turn: 'none' }] })] }))).toEqual([
      'runs[0].legs[0].lengthMm',
    ]);
    expect(paths(jobOf(aType({ prices: { jointKit: 1.5 } }), aRun()))).toEqual(['buswayTypes[0].prices.jointKit']);
    expect(() => printedText(JSON.stringify(aJob()).replace('6000', '1e400'))).toThrow('runs[0].legs[0].lengthMm');
  });
  test('every fault is told at once, each with a path, a message and a remedy', () => {
    const job = {
      ...aJob({ runs: [aRun({ level: 'F9', colour: 'red', legs: [leg(-1, 'back')] })] }),
      format: 'x',
      extra: 1,
    };
    const faults = refusals(job);
    expect(faults.map((fault) => fault.path).sort()).toEqual([
      'extra',
      'format',
      'runs[0].colour',
      'runs[0].legs[0].lengthMm',
      'runs[0].legs[0].turn',
      'runs[0].level',
    ]);
    for (const { message, remedy } of faults) expect([message.length > 10, remedy.length > 5]).toEqual([true, true]);
  });
});

describe('what is accepted', () => {
  test('a job without levels, types and runs prints empty lists', () => {
    expect(printed(aJob({ levels: [], buswayTypes: [], runs: [] }))).toEqual({
      format: 'busway-figures/1',
      runs: [],
      takeoff: [],
      labour: null,
      bid: null,
      checks: [],
    });
  });
  test('and with a labour book, hours of nought', () => {
    const figures = printed({ ...aJob({ runs: [] }), labourBook: aBook({ section: activity(1) }) });
    expect(figures.labour!.hours).toEqual({ likely: 0, mean: 0, sd: 0, p10: 0, p50: 0, p80: 0, p90: 0 });
  });
  test('empty lists within', () => {
    const run = aRun({ crossings: [], noJoint: [], noSupport: [], taps: [] });
    expect(refusals({ ...aJob({ runs: [run] }), extras: [], labourBook: aBook({}, { crew: [] }) })).toEqual([]);
  });
  test('labels of any script, and those that objects are born with', () => {
    const ids = ['Straße 7 – 母线', '__proto__', 'constructor', 'toString', 'hasOwnProperty', '🚧'];
    const job = aJob({
      levels: ids.map((id, i) => ({ id, name: id, order: i })),
      buswayTypes: ids.map((id) => aType({ id })),
      runs: ids.map((id) => aRun({ id, level: id, type: id, taps: ids.map((tap, i) => aTap(tap, 100 + 10 * i)) })),
    });
    const figures = printed({ ...job, labourBook: aBook({ tap: activity(1) }) });
    expect(figures.runs.map((run) => [run.id, run.layout.ok])).toEqual(ids.map((id) => [id, true]));
    expect(figures.labour!.byRun).toEqual(ids.map((run) => ({ run, hours: ids.length })));
    expect(figures.labour!.byLevel).toHaveLength(ids.length);
    expect(new Set(figures.takeoff.map((line) => line.run))).toEqual(new Set([...ids]));
  });
  test('an activity under a name that objects are born with is no activity, and harms none', () => {
    const text = JSON.stringify({ ...aJob(), labourBook: aBook({ section: activity(1), X: activity(9) }) });
    const job = JSON.parse(text.replace('"X":', '"__proto__":')) as JsonObject;
    const figures = printed(job);
    expect(figures.labour!.hours.likely).toBe(2);
  });
});
