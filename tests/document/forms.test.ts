import { describe, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { BuswayTypeDocument } from '../../src/document/job-document.ts';
import { readLevelForm, writeLevelForm } from '../../src/document/level-form.ts';
import { readProjectForm, writeProjectForm } from '../../src/document/project-form.ts';
import { readRunForm } from '../../src/document/run-form/read-run-form.ts';
import { writeRunForm } from '../../src/document/run-form/write-run-form.ts';
import { readTypeForm, writeTypeForm } from '../../src/document/type-form.ts';
import { fullDocument } from './full-document.ts';

const jobs = { 'the demo job': demoJob(), 'a document that says everything': fullDocument() };

describe.each(Object.entries(jobs))('%s, written into forms', (_name, job) => {
  it.each(['ft-in', 'metric'] as const)('reads back the same runs in %s', (units) => {
    const project = { ...job.project, units };
    for (const run of job.runs) {
      const read = readRunForm(writeRunForm(run, project), { ...job, project }, run);
      expect(read.faults).toEqual([]);
      expect(read.tapFaults).toEqual([]);
      expect(read.run).toEqual(run);
    }
  });

  it.each(['ft-in', 'metric'] as const)('reads back the same levels and busway types in %s', (units) => {
    const project = { ...job.project, units };
    for (const level of job.levels)
      expect(readLevelForm(writeLevelForm(level, project), project, level)).toMatchObject({ level, faults: [] });
    for (const type of job.buswayTypes)
      expect(readTypeForm(writeTypeForm(type, project), project, type)).toEqual({ type, faults: [], questions: [] });
  });

  it('reads back the same heading', () => {
    const { industrial, ordering: _ofItsOwnPage, ...heading } = job.project;
    expect(readProjectForm(writeProjectForm(job.project))).toEqual({
      ...heading,
      ...(industrial ? { industrial } : {}),
    });
    expect(readProjectForm(writeProjectForm(job.project), job.project)).toEqual(job.project);
  });
});

describe('a busway type, typed in from its sheet', () => {
  const project = demoJob().project;
  const type = demoJob().buswayTypes[0] as BuswayTypeDocument;
  const typed = (change: Record<string, string>, before: BuswayTypeDocument | null = null) =>
    readTypeForm({ ...writeTypeForm(type, project), ...change }, project, before);

  it('takes pounds per foot, pound-force feet and pounds by their exact definitions', () => {
    const read = typed({ weightKgPerM: '8.5 lb/ft', 'joint.torqueNm': '18 lbf·ft', 'feed.weightKg': '20 lb' });
    // NIST SP 811, appendix B.8: lb/ft = 1.488 164 kg/m, lbf·ft = 1.355 818 N·m, lb = 0.453 592 37 kg.
    expect(read.type.weightKgPerM).toBeCloseTo(8.5 * 1.488164, 5);
    expect(read.type.joint?.torqueNm).toBeCloseTo(18 * 1.355818, 4);
    expect(read.type.feed?.weightKg).toBeCloseTo(9.0718474, 7);
  });

  it('says beside its field what cannot be read, all at once', () => {
    const { faults } = typed({ weightKgPerM: 'heavy', stockLengthsMm: '20 ft; long', 'prices.tap': '12.345' });
    expect(faults.map((fault) => fault.field)).toEqual(['weightKgPerM', 'stockLengthsMm', 'prices.tap']);
    expect(faults[2]?.said).toContain('12.345 has 3 decimals; USD has 2.');
  });

  it('has a fitting without hands only where the tick is taken away', () => {
    expect(typed({ 'fittings.elbow.handed': '' }).type.fittings?.elbow?.handed).toBe(false);
    expect(typed({ 'fittings.elbow.legMm': '', 'fittings.elbow.weightKg': '' }).type.fittings).toEqual({
      tee: type.fittings?.tee,
    });
  });

  it('keeps each step of the joint on its own line', () => {
    expect(
      typed({ 'joint.steps': 'Align.\r\n\r\n HOLD: Seen seated. \nCHECK: By another.' }).type.joint?.steps,
    ).toEqual(['Align.', 'HOLD: Seen seated.', 'CHECK: By another.']);
  });

  it('has no factory cuts where none is given', () => {
    expect(
      typed({ 'factoryCut.minMm': '', 'factoryCut.maxMm': '', 'factoryCut.stepMm': '' }).type.factoryCut,
    ).toBeNull();
  });
});
