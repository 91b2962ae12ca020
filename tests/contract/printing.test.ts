import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { fullDocument } from '../document/full-document.ts';
import { runScript } from '../support/run-script.ts';
import { scenarioT1, scenarioT1AsDrawn, scenarioT2 } from '../support/scenarios.ts';
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
} from './job-text.ts';

/** Jobs that break every rule of layout and takeoff that a small job can break. */
const LIMITS = { jointClearMm: 400, endClearMm: 300, minSpacingMm: 250, boxLengthMm: 200 };
const wall = (atMm: number, thicknessMm = 200) => ({ atMm, thicknessMm, kind: 'fire-wall', fireRatingMin: 60 });
const BROKEN: readonly JsonObject[] = [
  jobOf(aType({ tap: LIMITS }), aRun({ taps: [aTap('A', 3100), aTap('B', 3200), aTap('C', 100), aTap('D', 7000)] })),
  jobOf(aType(), aRun({ legs: [leg(5000)] })),
  jobOf(aType({ stockLengthsMm: [3000] }), aRun({ crossings: [wall(3000)] })),
  jobOf(
    aType({ crossing: { jointClearMm: 100, supportClearMm: 50 } }),
    aRun({ legs: [leg(3300, 'left'), leg(3300)], crossings: [wall(3000)] }),
  ),
  jobOf(aType(), aRun({ noSupport: [{ fromMm: 1000, toMm: 5000, reason: 'duct' }] })),
  jobOf(aType(), aRun({ noJoint: [{ fromMm: 1000, toMm: 5000 }] })),
  jobOf(aType(), aRun({ supportCapacityKg: 24 })),
  jobOf(aType(), aRun({ supportCapacityKg: 5 })),
  jobOf(
    aType({ support: {}, tap: {}, crossing: {}, fittings: {}, feed: {} }),
    aRun({ taps: [aTap('A', 1000), aTap('B', 2000)], crossings: [wall(2000)] }),
  ),
  jobOf(aType({ fittings: {} }), aRun({ legs: [leg(3300, 'left'), leg(3300)] }), aBranch('B', 'R', 1000, 'left')),
  jobOf(aType(), aRun({ legs: [leg(3300, 'up', { tapsMustFace: 'right' }), leg(3600, 'left'), leg(3300)] })),
  jobOf(aType(), aRun({ legs: [leg(3300, 'left'), leg(500, 'left'), leg(3300)] })),
  jobOf(
    aType({ fittings: { elbow: { legMm: 300 } } }),
    aRun({ legs: [leg(3300, 'left'), leg(3300)], dropMm: 4000, rod: 'M10' }),
  ),
  jobOf(aType(), aRun({ taps: [aTap('A', 3000, { fixed: true })], feed: { kind: 'centre', atMm: 3000 } })),
  jobOf(aType({ tap: LIMITS }), aRun({ legs: [leg(4500)], end: { reachMm: 4600, hardStopMm: 4700 } })),
  aJob({ buswayTypes: [aType({ support: { maxEndOverhangMm: 600 } })] }, { codeBasis: 'IEC' }),
  aJob({ buswayTypes: [aType({ support: { maxEndOverhangMm: 600 } })] }, { units: 'ft-in' }),
];
const T1 = scenarioT1() as unknown as JsonObject;
const T2 = scenarioT2() as unknown as JsonObject;
const FULL = fullDocument() as unknown as JsonObject;

describe('"the same document always prints the same bytes"', () => {
  test.each<readonly [string, JsonObject]>([
    ['scenario T1', T1],
    ['the document of every key', FULL],
    ...BROKEN.map((job, i) => [`broken job ${i + 1}`, job] as const),
  ])('%s, twice, and with the keys of every object turned round', (_, job) => {
    const once = printedText(JSON.stringify(job));
    expect(printedText(JSON.stringify(job))).toBe(once);
    expect(printedText(JSON.stringify(turned(job)))).toBe(once);
    expect(printedText(`\uFEFF${JSON.stringify(job, null, 3)}\n`)).toBe(once);
  });
  test('a labour book too: the draws do not hang on the order of its activities', () => {
    const three = (low: number, likely: number, high: number) => activity(likely, { low, high });
    const job = {
      ...aJob(),
      labourBook: aBook({ section: three(1, 2, 5), joint: three(1, 3, 4), support: three(0, 1, 2) }),
    };
    expect(printedText(JSON.stringify(turned(job)))).toBe(printedText(JSON.stringify(job)));
  });
});

describe('the shape and its key order', () => {
  const figures = printed({ ...T1, labourBook: T2.labourBook! });
  test('keys stand as on the page', () => {
    expect(Object.keys(figures)).toEqual(['format', 'runs', 'takeoff', 'labour', 'bid', 'checks']);
    expect(Object.keys(figures.runs[0]!)).toEqual(['id', 'lengthMm', 'layout', 'electrical', 'failover']);
    expect(Object.keys(figures.runs[0]!.layout)).toEqual(['ok', 'sections', 'joints', 'supports', 'facing']);
    expect(Object.keys(figures.runs[0]!.layout.sections[0]!)).toEqual(['fromMm', 'toMm', 'kind', 'hand']);
    expect(Object.keys(figures.runs[0]!.layout.supports[0]!)).toEqual(['atMm', 'loadKg', 'continuousLoadKg']);
    expect(Object.keys(figures.runs[0]!.layout.facing[0]!)).toEqual(['leg', 'compassDeg', 'relative']);
    expect(Object.keys(figures.labour!)).toEqual(['hours', 'byActivity', 'byLevel', 'byRun', 'costPerProductiveHour']);
    expect(Object.keys(figures.labour!.hours)).toEqual(['likely', 'mean', 'sd', 'p10', 'p50', 'p80', 'p90']);
    for (const check of figures.checks) {
      expect(Object.keys(check)).toEqual(['rule', 'severity', 'run', 'atMm', 'message', 'source']);
    }
  });
  test('runs in document order; takeoff items in the order of the page within a run', () => {
    const job = jobOf(aType(), aRun({ id: 'Z' }), aRun({ id: 'A' }));
    expect(printed(job).runs.map(({ id }) => id)).toEqual(['Z', 'A']);
    const ORDER = [
      ...['section', 'elbow', 'tee', 'clamp', 'contact-set', 'bolt', 'end-feed', 'end-cap', 'slot-closure', 'support'],
      ...['rod', 'anchor', 'nut', 'fire-seal', 'tap', 'drop', 'label', 'rod-stock', 'extra'],
    ];
    const items = figures.takeoff.map(({ item }) => ORDER.indexOf(item));
    expect(items).not.toContain(-1);
    expect(items).toEqual([...items].sort((a, b) => a - b));
  });
});

describe('checks: "Order: run, distance, rule"', () => {
  test.each(BROKEN.map((job, i) => [i + 1, job] as const))('broken job %d', (_, job) => {
    const figures = printed(job);
    const order = figures.runs.map(({ id }) => id);
    const key = (check: (typeof figures.checks)[number]) =>
      [check.run === null ? order.length : order.indexOf(check.run), check.atMm ?? -1, check.rule] as const;
    const keys = figures.checks.map(key);
    const sorted = [...keys].sort((a, b) => a[0] - b[0] || a[1] - b[1] || (a[2] < b[2] ? -1 : a[2] > b[2] ? 1 : 0));
    expect(keys).toEqual(sorted);
    expect(keys.length).toBeGreaterThan(0);
  });
});

describe('what checks say', () => {
  const all = [...BROKEN, T1, T2, FULL, scenarioT1AsDrawn() as unknown as JsonObject].flatMap(
    (job) => printed(job).checks,
  );
  test('each has a rule, a place, words that end a sentence, and a source', () => {
    for (const { rule, severity, message, source } of all) {
      expect(rule).toMatch(/^[a-z]+\.[a-z-]+$/);
      expect(['stop', 'warning', 'note']).toContain(severity);
      expect(message).toMatch(/^[A-Z].*\.$/);
      expect(message).not.toMatch(/undefined|null|NaN|\[object| {2}/);
      expect(source).not.toBe('');
    }
  });
  test('none speaks as the authority', () => {
    for (const { message } of all) {
      expect(message).not.toMatch(
        /\b(complies|compliant|approved|permitted|safe|certif|code requires|must be energi[sz]ed|may be energi[sz]ed)/i,
      );
    }
  });
  test("lengths are shown in the project's own unit", () => {
    const words = (units: string) =>
      printed(aJob({ runs: [aRun({ legs: [leg(5000)] })] }, { units }))
        .checks.map(({ message }) => message)
        .join('\n');
    expect(words('metric')).toContain('5.000 m');
    expect(words('ft-in')).toMatch(/16'-4 7\/8"/);
    expect(words('ft-in')).not.toMatch(/\d m\b/);
  });
});

describe('the command itself', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'contract-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  const run = (name: string, content: string) => {
    const file = path.join(folder, name);
    writeFileSync(file, content);
    return runScript('scripts/figures.ts', [file]);
  };
  test('"exit 0 when computed, checks with severity stop included", one JSON object and nothing else', async () => {
    const text = `\uFEFF${JSON.stringify(scenarioT1AsDrawn())}`;
    const { code, stdout, stderr } = await run('stops.json', text);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toBe(`${printedText(text)}\n`);
  });
  test('"2 when the document is refused, with each fault\'s path and remedy on standard error"', async () => {
    const job = { ...aJob({ runs: [aRun({ level: 'F9', colour: 'red', legs: [leg(-1)] })] }), format: 'x' };
    const { code, stdout, stderr } = await run('refused.json', JSON.stringify(job));
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    for (const fault of ['format: ', 'runs[0].colour: ', 'runs[0].legs[0].lengthMm: ', 'runs[0].level: ']) {
      expect(stderr).toContain(`\n${fault}`);
    }
  });
});

/** The same value with the keys of every object in reverse. */
function turned(value: Json | undefined): Json {
  if (Array.isArray(value)) return value.map(turned);
  if (value === undefined || value === null) return null;
  if (typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, inner]) => [key, turned(inner)]),
  );
}
