import { describe, expect, it } from 'vitest';
import { aJob, aTap, feet } from '../../support/job.ts';
import { inFeet, laidOut, layoutType, lRun, messages, rulesOf, straightRun } from './l-run.ts';

const iec = { project: { ...aJob().project, codeBasis: 'IEC' as const } };
const withSupport = (changes: Partial<ReturnType<typeof layoutType>['support']>) => {
  const type = layoutType();
  return { ...type, support: { ...type.support, ...changes } };
};

// NEC 368.30: supports at intervals not over 5 ft (1 524 mm) unless the busway is designed and marked for more.
describe('the spacing of supports', () => {
  it('is 5 ft with a note where the sheet is silent, on the NEC basis', () => {
    const layout = laidOut(straightRun(20), withSupport({ maxSpacing: null }));
    const note = layout.findings.find((finding) => finding.rule === 'support.source');
    expect([note?.severity, note?.source]).toEqual(['note', expect.stringContaining('NEC 368.30')]);
    const gaps = layout.supports.slice(1).map((support, i) => inFeet(support.at - layout.supports[i]!.at));
    expect(Math.max(...gaps)).toBeLessThanOrEqual(5);
  });

  it('of exactly 1 524 mm needs no source, of 1 525 mm it does', () => {
    expect(rulesOf(laidOut(straightRun(20), withSupport({ maxSpacing: 1524 * 80, source: null })))).not.toContain(
      'support.source',
    );
    expect(rulesOf(laidOut(straightRun(20), withSupport({ maxSpacing: 1525 * 80, source: ' ' })))).toContain(
      'support.source',
    );
  });

  it('is a stop where the sheet is silent, on the IEC basis, and no supports are laid out', () => {
    const layout = laidOut(straightRun(20), withSupport({ maxSpacing: null }), iec);
    expect([layout.ok, layout.supports]).toEqual([true, []]);
    expect(layout.findings.find((finding) => finding.severity === 'stop')?.rule).toBe('limit.unknown');
  });

  it('needs the end overhang on either basis', () => {
    for (const job of [{}, iec]) {
      const layout = laidOut(straightRun(20), withSupport({ maxEndOverhang: null }), job);
      expect(layout.supports).toEqual([]);
      expect(layout.findings.filter((finding) => finding.severity === 'stop').map((finding) => finding.rule)).toEqual([
        'limit.unknown',
      ]);
    }
  });
});

describe('a limit that is not stated', () => {
  it('gives one warning each, and binds nothing', () => {
    const type = {
      ...withSupport({ jointClear: null, fittingWithin: null }),
      tap: { jointClear: null, endClear: null, minSpacing: null, boxLength: null },
      crossing: { jointClear: null, supportClear: null },
      feed: { joins: true, weightKg: null },
    };
    const taps = [aTap({ id: 'T1', place: { at: feet(20) } }), aTap({ id: 'T2', place: { at: feet(20) } })];
    const layout = laidOut(lRun({ taps }), type);
    expect(messages(layout, 'limit.unknown').map((message) => message.split(' is not stated')[0])).toEqual([
      'The clearance of a hanger from a joint',
      'The clearance of a hanger from a wall or floor',
      'The clearance of a joint from a wall or floor',
      'The clearance of a tap-off from a joint',
      'The clearance of a tap-off from the end',
      'The greatest distance of a hanger from a fitting',
      'The least distance between tap-offs',
      'The length of the tap-off box',
      'What one hanger may carry',
    ]);
    expect(messages(layout, 'weight.unknown').map((message) => message.split(' is not stated')[0])).toEqual([
      'The weight of 2 of the 2 tap-offs',
      'The weight of an elbow',
      'The weight of the feed',
    ]);
    expect(rulesOf(layout).some((rule) => rule.startsWith('tap.'))).toBe(false);
  });

  it('is not mentioned where there is nothing for it to bind', () => {
    const type = layoutType({ crossing: { jointClear: null, supportClear: null } });
    expect(messages(laidOut(straightRun(20), type), 'limit.unknown')).toEqual([
      'What one hanger may carry is not stated: no load was held to it. Enter it; until then this is unknown, not a pass.',
    ]);
  });
});

describe('the capacity of supports', () => {
  it('adds supports where fewer would carry too much', () => {
    const free = laidOut(straightRun(70));
    const held = laidOut(straightRun(70, { supportCapacityKg: 30 }));
    expect(Math.max(...free.supports.map((support) => support.loadKg))).toBeGreaterThan(30);
    expect(Math.max(...held.supports.map((support) => support.loadKg))).toBeLessThanOrEqual(30);
    expect(held.supports.length).toBeGreaterThan(free.supports.length);
  });

  it('that no layout keeps says what would do', () => {
    const taps = [aTap({ place: { at: feet(10) }, weightKg: 60 })];
    const layout = laidOut(straightRun(20, { taps, supportCapacityKg: 10 }));
    expect(layout.supports).toEqual([]);
    const needed = Number(
      /least capacity that any legal layout needs is ([\d.]+) kg/.exec(messages(layout, 'support.load')[0]!)?.[1],
    );
    expect(laidOut(straightRun(20, { taps, supportCapacityKg: needed })).supports.length).toBeGreaterThan(0);
    expect(laidOut(straightRun(20, { taps, supportCapacityKg: needed - 0.2 })).supports).toEqual([]);
  });

  it('that only the continuous beam passes is a stop, with what a lower one would give', () => {
    const run = straightRun(70);
    const loads = laidOut(run).supports;
    const capacity = Math.max(...loads.map((support) => support.loadKg));
    expect(Math.max(...loads.map((support) => support.continuousLoadKg))).toBeGreaterThan(capacity);
    const layout = laidOut({ ...run, supportCapacityKg: capacity });
    expect(layout.supports).toEqual(loads);
    expect(messages(layout, 'support.load')[0]).toMatch(
      /^As a continuous beam the hanger at .* Searched again at [\d.]+ kg by simple spans: \d+ hangers/,
    );
  });
});

describe('supports on a structure grid', () => {
  it('stand on its lines only', () => {
    const layout = laidOut(straightRun(70, { structure: { kind: 'grid', pitch: feet(3), offset: feet(-1.5) } }));
    expect(layout.supports.map((support) => inFeet(support.at) % 3)).toEqual(layout.supports.map(() => 1.5));
  });

  it('cannot stand where its lines are farther apart than the spacing', () => {
    const layout = laidOut(straightRun(70, { structure: { kind: 'grid', pitch: feet(12), offset: feet(1.5) } }));
    expect(messages(layout, 'support.blocked')[0]).toContain(`structure every 12'-0"`);
  });
});
