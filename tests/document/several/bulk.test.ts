import fc from 'fast-check';
import { expect, it } from 'vitest';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import { parseJobDocument, type RunDocument } from '../../../src/document/job-document.ts';
import { bulkChanged, bulkValue } from '../../../src/document/several/bulk-changed.ts';
import { BULK_FIELDS, type BulkSet } from '../../../src/document/several/bulk-schema.ts';
import { planBulk } from '../../../src/document/several/plan-bulk.ts';
import { readBulkForm } from '../../../src/document/several/read-bulk-form.ts';

const job = demoJob();
const taken = new Set(job.runs.map((run) => run.id));
const any = <T>(...values: readonly T[]) => fc.constantFrom(...values);

/** Any choice of fields, with values and with nothing. */
const anySet: fc.Arbitrary<BulkSet> = fc.record(
  {
    level: any('F1', 'F2'),
    area: any('East', null),
    side: any('A' as const, 'B' as const, null),
    conductorSide: any('left' as const, 'right' as const),
    elevationMm: fc.integer({ min: 0, max: 9_000 }),
    supply: any('PDU-9', null),
    deviceA: any(100, null),
    faultKA: any(10, null),
    xOverR: any(2, null),
    terminations: any(0, 4),
    structure: any({ kind: 'continuous' as const }, { kind: 'grid' as const, pitchMm: 1_200, offsetMm: 0 }, null),
    end: any({ shortMm: 100, longMm: 200 }, null),
    dropMm: any(900, null),
    rod: any('M10' as const, null),
    rodStockMm: any(3_000, null),
    attachment: any('strut' as const, null),
    supportCapacityKg: any(120, null),
  },
  { requiredKeys: [] },
);
const anyOf: fc.Arbitrary<RunDocument> = fc.constantFrom(...job.runs);

it('a change gives every field that it names, leaves every other, and done twice is as done once', () => {
  fc.assert(
    fc.property(anyOf, anySet, (run, set) => {
      const after = bulkChanged(run, set);
      for (const field of BULK_FIELDS) {
        const wanted = set[field] === undefined ? bulkValue(run, field) : set[field];
        expect(bulkValue(after, field)).toEqual(wanted);
      }
      expect([after.id, after.legs, after.taps, after.pairedRun]).toEqual([run.id, run.legs, run.taps, run.pairedRun]);
      expect(bulkChanged(after, set)).toEqual(after);
      expect(parseJobDocument({ ...job, runs: job.runs.map((old) => (old.id === run.id ? after : old)) }).ok).toBe(
        true,
      );
    }),
  );
});

it('an empty change is the very same run', () => {
  for (const run of job.runs) expect(bulkChanged(run, {})).toEqual(run);
});

it('only what differs is listed, and runs that have it already are counted', () => {
  const runs = ['F1-R01-A', 'F1-R01-B'];
  const plan = planBulk(job, taken, { runs, set: { side: 'A', rod: '3/8' } });
  expect(plan).toMatchObject({
    ok: true,
    same: 1,
    differences: [{ run: 'F1-R01-B', field: 'side', from: 'B', to: 'A' }],
  });
});

it('the form reads lengths in the units of the job, and the word none as nothing', () => {
  const { set, faults } = readBulkForm(
    {
      elevationMm: `9'-3"`,
      area: 'None',
      rod: '',
      structure: 'grid',
      pitchMm: '4 ft',
      longMm: '2 in',
      supportCapacityKg: '330 lb',
    },
    job.project,
  );
  expect(faults).toEqual([]);
  expect(set).toEqual({
    elevationMm: 9.25 * 304.8,
    area: null,
    supportCapacityKg: expect.closeTo(330 * 0.45359237, 6), // the pound is 0.45359237 kg exactly (NIST HB 44, App. C)
    structure: { kind: 'grid', pitchMm: 1219.2, offsetMm: 0 },
    end: { shortMm: 0, longMm: 50.8 },
  });
});
