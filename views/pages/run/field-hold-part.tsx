import type { JSX } from 'preact';
import { listed, sayIn } from '../../../src/domain/layout/say.ts';
import type { Run, UnitSystem } from '../../../src/domain/model.ts';
import { Confirm } from '../../components/confirm.tsx';
import { Part } from '../../components/part.tsx';

export interface FieldHoldPartProps {
  readonly jobId: string;
  readonly runId: string;
  readonly units: UnitSystem;
  readonly run: Pick<Run, 'id' | 'fieldHold'>;
  /** null for those who may not change the design. */
  readonly letGo: { readonly csrf: string; readonly version: number } | null;
}

/** What the floor substituted and the design is kept to, with the office's way out of it. */
export function FieldHoldPart({ jobId, runId, units, run, letGo }: FieldHoldPartProps): JSX.Element | null {
  if (run.fieldHold === null) return null;
  const say = sayIn(units);
  const sections = run.fieldHold.sections.map(
    ({ from, to, kind }) => `${say(to - from)}${kind === 'cut' ? ' cut' : ''} from ${say(from)} to ${say(to)}`,
  );
  return (
    <Part title="Substituted on the floor" id="field-hold">
      <p>
        The floor put in {listed(sections)}. Every later layout keeps to that, and leaves hangers where they stand,
        while the route lets it; where it does not, the checks say so and the run waits.
      </p>
      {letGo !== null && (
        <Confirm
          action={`/jobs/${jobId}/runs/${runId}/free-layout`}
          csrf={letGo.csrf}
          version={letGo.version}
          ask="Let go of it"
          question="The sections and hangers of this run are chosen freely again. It is a change of the design and can be undone; the floor keeps what it has until the run is released, and the release then takes these sections out."
          answer={`Lay out ${run.id} freely`}
        />
      )}
    </Part>
  );
}
