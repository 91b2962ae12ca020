import { expect, test } from 'vitest';
import { crewTools, firstTools } from '../../../src/domain/ordering/crew-tools.ts';
import type { CrewTool } from '../../../src/domain/ordering/ordering.ts';
import { aJob, aType } from '../../support/job.ts';
import { TWO_CREWS } from '../../support/ordering.ts';

const tool = (changes: Partial<CrewTool>): CrewTool => ({
  tool: 'Torque wrench',
  perCrew: 1,
  activity: null,
  crews: null,
  note: null,
  ...changes,
});

test('a tool is counted for the crews that do its work: two a crew for the one that makes joints', () => {
  const [joints, all] = crewTools([tool({ activity: 'joint', perCrew: 2 }), tool({ tool: 'Lift' })], TWO_CREWS);
  expect(joints).toMatchObject({ crewCount: 1, quantity: 2, crewNames: ['Sections'] });
  expect(all).toMatchObject({ crewCount: 2, quantity: 2, crewNames: ['Hangers', 'Sections'] });
});

test('the number of crews given by hand stands above the plan', () => {
  expect(crewTools([tool({ activity: 'joint', crews: 3, perCrew: 2 })], TWO_CREWS)).toMatchObject([
    { crewCount: 3, quantity: 6, crewNames: [] },
  ]);
});

test('without a crew plan a tool has no number, unless it is given by hand', () => {
  const [open, byHand] = crewTools([tool({}), tool({ crews: 2 })], null);
  expect(open).toMatchObject({ crewCount: null, quantity: null });
  expect(byHand).toMatchObject({ quantity: 2 });
});

test('the first list names the seating tool in the sheet’s words and the torque it states, or that it states none', () => {
  const worded = aType({
    words: { clamp: null, contactSet: null, seatingTool: 'ram' },
    joint: { clamps: 2, contactSets: 1, bolts: 2, torqueNm: 24, steps: null },
  });
  const names = (job = aJob()) => firstTools(job).map((one) => one.tool);
  expect(names(aJob({ types: [worded] }))).toEqual(
    expect.arrayContaining(['Ram for demo-250A-3PN', 'Torque wrench that reaches 24 N·m']),
  );
  expect(names()).toEqual(expect.arrayContaining(['Seating tool for demo-250A-3PN', 'Torque wrench']));
  expect(firstTools(aJob()).find((one) => one.tool === 'Torque wrench')?.note).toContain('not stated');
  expect(names(aJob({ runs: [] }))).not.toContain('Torque wrench');
});
