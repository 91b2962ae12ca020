import { demoProject } from '../../../src/document/demo/demo-job.ts';
import { demoType } from '../../../src/document/demo/demo-type.ts';
import { feet } from '../../../src/document/demo/feet.ts';
import type { JobDocument } from '../../../src/document/job-document.ts';

/** A small invented job that lists are read into: two levels, one type, one run of 70 ft with a tap. */
export function listJob(units: 'ft-in' | 'metric' = 'ft-in'): JobDocument {
  return {
    format: 'busway-jobbook/1',
    project: { ...demoProject(), units },
    levels: [
      { id: 'F1', name: 'Floor 1', order: 1 },
      { id: 'F2', name: 'Floor 2', order: 2 },
    ],
    buswayTypes: [demoType()],
    runs: [
      {
        id: 'F1-R01-A',
        level: 'F1',
        type: 'demo-250A-3PN',
        conductorSide: 'left',
        feed: { kind: 'end' },
        legs: [{ lengthMm: feet(70), turn: 'none' }],
        taps: [{ id: 'T1', atMm: feet(1.75), phases: 'L1', deviceA: 30, loadVA: 2000 }],
      },
    ],
  };
}
