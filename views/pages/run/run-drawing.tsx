import type { JSX } from 'preact';
import type { RunLayout } from '../../../src/domain/layout/result.ts';
import type { Run, UnitSystem } from '../../../src/domain/model.ts';
import { cardHref } from '../../components/card-href.ts';
import { Part } from '../../components/part.tsx';
import { PrintDrawing } from '../../components/print-drawing.tsx';
import { RunStrip } from '../../components/run-strip.tsx';
import type { StripRecord } from '../../drawings/strip.tsx';
import { FacingWords } from './facing-words.tsx';
import type { ReleasedRun } from './run-things.tsx';

export interface RunDrawingProps {
  readonly jobId: string;
  readonly runId: string;
  readonly units: UnitSystem;
  readonly run: Run;
  readonly layout: RunLayout;
  readonly released: ReleasedRun | null;
  readonly changed: boolean;
}

/** The strip of what the floor has, and beside it of the design where that has moved on. */
export function RunDrawing(props: RunDrawingProps): JSX.Element {
  const { jobId, runId, units, run, layout, released, changed } = props;
  const print = (of: 'floor' | 'design') => (
    <PrintDrawing
      href={`/jobs/${jobId}/runs/${runId}/strip`}
      units={units}
      of={of === 'floor' ? `the strip of ${run.id} as released` : `the strip of ${run.id} as designed`}
      id={of}
      query={{ of }}
    />
  );
  if (released === null)
    return (
      <Part title="Strip of the design" id="strip">
        <FacingWords layout={layout} />
        <RunStrip run={run} layout={layout} units={units} />
        {print('design')}
      </Part>
    );
  return (
    <>
      <Part title={`Strip of revision ${released.number}, as the floor has it`} id="strip">
        <FacingWords layout={released.layout} />
        <RunStrip run={released.run} layout={released.layout} record={recordOf(jobId, released)} units={units} />
        {print('floor')}
      </Part>
      {changed && (
        <Part title="Strip of the design as it stands now" id="strip-now">
          <FacingWords layout={layout} />
          <RunStrip run={run} layout={layout} units={units} idPrefix="now" />
          {print('design')}
        </Part>
      )}
    </>
  );
}

function recordOf(jobId: string, released: ReleasedRun): StripRecord {
  return {
    pieces: released.pieces.map(({ id, mark, state }) => ({ mark, state, href: cardHref(jobId, 'piece', id) })),
    joints: released.joints.map(({ id, mark, state }) => ({ mark, state, href: cardHref(jobId, 'joint', id) })),
    supports: released.supports.map(({ id, mark, state }) => ({ mark, state, href: cardHref(jobId, 'support', id) })),
    taps: Object.fromEntries(
      released.taps.map(({ id, mark, state }) => [mark, { mark, state, href: cardHref(jobId, 'tap', id) }]),
    ),
  };
}
