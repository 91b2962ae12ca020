import { describe, expect, test } from 'vitest';
import { campusJob } from '../../src/document/demo/campus.ts';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { feet, milliohmsPerFoot, poundsPerFoot } from '../../src/document/demo/feet.ts';
import { type JobDocument, parseJobDocument } from '../../src/document/job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';
import { scenarioT1, scenarioT1AsDrawn, scenarioT2, standardRun } from '../support/scenarios.ts';

const layoutsOf = (document: JobDocument) => layoutJob(toModel(document));
const tapsOf = (document: JobDocument) => document.runs.flatMap((run) => run.taps ?? []);

describe('the demo job', () => {
  const demo = demoJob();
  const layouts = layoutsOf(demo);

  test('is a job document', () => {
    expect(parseJobDocument(demo)).toMatchObject({ ok: true });
  });

  test('says that it is invented', () => {
    expect(demo.project.name).toContain('invented');
    expect(demo.project.site).toContain('invented');
    expect(demo.buswayTypes[0]?.sheet?.document).toContain('Invented');
    expect(demo.labourBook?.version).toContain('invented');
  });

  test('has four floors of twelve runs, one round a corner and one with a branch', () => {
    const floors = demo.levels.map((level) => demo.runs.filter((run) => run.level === level.id).length);
    expect(floors).toEqual([12, 12, 12, 12]);
    expect(demo.runs.filter((run) => run.legs.length > 1).map((run) => run.id)).toEqual(['F3-R06-A']);
    expect(demo.runs.filter((run) => run.feed.kind === 'tee').map((run) => run.feed.fromRun)).toEqual(['F1-R06-A']);
  });

  test('pairs each row’s sides, and each cabinet’s two taps', () => {
    const paired = demo.runs.filter((run) => run.pairedRun !== undefined);
    const partners = paired.map((run) => demo.runs.find((other) => other.id === run.pairedRun));
    expect(paired).toHaveLength(46);
    expect(partners.map((other) => other?.pairedRun)).toEqual(paired.map((run) => run.id));
    const cabinets = new Map<string, number>();
    for (const { pair } of tapsOf(demo)) if (pair) cabinets.set(pair, (cabinets.get(pair) ?? 0) + 1);
    expect([cabinets.size, ...new Set(cabinets.values())]).toEqual([460, 2]);
  });

  test('lays out every run without anything to remark: no stop, no unknown limit', () => {
    expect(layouts.filter((layout) => !layout.ok)).toEqual([]);
    expect(layouts.flatMap((layout) => layout.findings)).toEqual([]);
  });

  test('has a hold point, two torques and a check by another in the make-up of its joint', () => {
    const steps = demo.buswayTypes[0]?.joint?.steps ?? [];
    const marks = steps.map((step) => /^(HOLD|TORQUE|CHECK):/.exec(step)?.[1]).filter(Boolean);
    expect(marks).toEqual(['TORQUE', 'HOLD', 'TORQUE', 'CHECK']);
  });
});

describe('feet and pounds', () => {
  test('convert exactly to what the document keeps', () => {
    expect(feet(70)).toBe(21_336);
    expect(feet(1.75)).toBe(533.4);
    expect(feet(1 / 192)).toBe(1.5875);
  });

  // 1 lb/ft = 1.48816394 kg/m and 1 ft = 0.3048 m: NIST SP 811, appendix B.8.
  test('of the demo’s sheet', () => {
    expect(poundsPerFoot(8.5)).toBeCloseTo(8.5 * 1.48816394, 5);
    expect(milliohmsPerFoot(0.09)).toBeCloseTo(0.09 / 0.3048, 6);
  });
});

describe('the scenarios', () => {
  test('are job documents', () => {
    for (const document of [standardRun(), scenarioT1(), scenarioT1AsDrawn(), scenarioT2()]) {
      expect(parseJobDocument(document)).toMatchObject({ ok: true });
    }
  });

  test('the standard run as drawn has two taps on joints', () => {
    const stops = layoutsOf(standardRun())[0]?.findings.filter((finding) => finding.severity === 'stop');
    expect(stops?.map((stop) => stop.at)).toEqual([feet(19.25) * 80, feet(40.25) * 80]);
  });

  test('the L-run can be built only after its feed was shifted', () => {
    expect(layoutsOf(scenarioT1AsDrawn())[0]?.ok).toBe(false);
    expect(layoutsOf(scenarioT1())[0]?.ok).toBe(true);
  });
});

describe('a campus', () => {
  test('is the same for the same seed, and another for another', () => {
    expect(campusJob({ runs: 60, seed: 3 })).toEqual(campusJob({ runs: 60, seed: 3 }));
    expect(campusJob({ runs: 60, seed: 3 })).not.toEqual(campusJob({ runs: 60, seed: 4 }));
  });

  test.each([1, 2, 25, 301])('of %i runs is a job document that lays out whole', (runs) => {
    const campus = campusJob({ runs, seed: 1 });
    expect(campus.runs).toHaveLength(runs);
    expect(parseJobDocument(campus)).toMatchObject({ ok: true });
    expect(layoutsOf(campus).filter((layout) => !layout.ok || layout.findings.length > 0)).toEqual([]);
  });

  test('of a thousand runs has about 8 pieces and 20 taps a run', () => {
    const campus = campusJob({ runs: 1000, seed: 1 });
    const pieces = layoutsOf(campus).reduce((sum, layout) => sum + layout.pieces.length, 0);
    expect(pieces / 1000).toBeGreaterThan(7);
    expect(pieces / 1000).toBeLessThan(10);
    expect(tapsOf(campus).length / 1000).toBeCloseTo(20, 0);
  });
});
