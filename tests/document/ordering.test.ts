import { expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { JobDocument, OrderingDocument } from '../../src/document/job-document.ts';
import { parseJobDocument } from '../../src/document/parse-job-document.ts';
import { printFigures } from '../../src/document/print-figures.ts';
import { toModel } from '../../src/document/to-model.ts';
import { figures } from '../../src/domain/figures.ts';

const ordered = (ordering: unknown): unknown => {
  const job = demoJob();
  return { ...job, project: { ...job.project, ordering } };
};
const faults = (ordering: unknown) => {
  const parsed = parseJobDocument(ordered(ordering));
  return parsed.ok ? [] : parsed.faults.map(({ path, message }) => `${path}: ${message}`);
};
const printed = (document: JobDocument) => JSON.stringify(printFigures(figures(toModel(document))));

it('a document without rules for ordering prints the figures of one with empty rules, byte for byte', () => {
  expect(printed(ordered({}) as JobDocument)).toBe(printed(demoJob()));
});

it('rules for spares stand beside the takeoff, which stays as it was, and the bid prices them', () => {
  const rules: OrderingDocument = { spares: [{ item: 'elbow', percent: 10, minimum: 2, ownerSpares: 1 }] };
  const { spares, bid, ...rest } = JSON.parse(printed(ordered(rules) as JobDocument));
  const { bid: without, ...before } = JSON.parse(printed(demoJob()));
  expect(rest).toEqual(before);
  // The demo has one elbow: 10 % is a tenth, so the minimum of two stands.
  expect(spares).toEqual([
    { item: 'elbow', hand: 'inside', type: 'demo-250A-3PN', needed: 1, waste: 0, spare: 2, owner: 1, unit: 'each' },
  ]);
  // Three at 640.00, in the base of the 7 % tax: 134.40 more of it.
  const amountOf = (of: typeof bid, name: string) =>
    of.lines.find(({ line }: { line: string }) => line === name)?.amount;
  expect(amountOf(bid, 'spares')).toBe(192_000);
  expect(amountOf(bid, 'tax') - amountOf(without, 'tax')).toBe(13_440);
  expect(amountOf(without, 'spares')).toBeUndefined();
});

it('refuses what cannot be meant, with the place', () => {
  expect(
    faults({
      leadDays: [
        { item: 'section', days: 1 },
        { item: 'section', days: 2 },
      ],
    }),
  ).toEqual(['project.ordering.leadDays[1].item: The lead time of "section" is stated twice.']);
  expect(faults({ spares: [{ item: 'tap', type: 'nothing' }] })).toEqual([
    'project.ordering.spares[0].type: The job has no busway type "nothing".',
  ]);
  expect(faults({ spares: [{ item: 'cable', percent: -1 }] }).map((fault) => fault.split(':')[0])).toEqual([
    'project.ordering.spares[0].item',
    'project.ordering.spares[0].percent',
  ]);
  expect(faults({ reorderPoint: 3 })[0]).toContain('project.ordering.reorderPoint');
  expect(faults({ braceEverySupports: 0, cordStockMm: [0] })).toHaveLength(2);
});
