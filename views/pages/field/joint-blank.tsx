import type { JSX } from 'preact';
import type { JointSheet, JointStep } from '../../../src/domain/quality/joint-sheet.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { Caution } from '../../components/caution.tsx';
import { Drawing } from '../../components/drawing.tsx';
import { torque } from '../../words/quality/figures.ts';
import type { Speech } from '../../words/quality.ts';
import { Box, Line } from './box.tsx';

export interface JointBlankProps {
  readonly say: Speech;
  readonly at: Length;
  readonly sheet: JointSheet;
  /** The sheet's own name and revision. */
  readonly source: string | null;
  readonly neighbours: readonly { readonly mark: string; readonly what: string }[];
}

/** The card of a joint for a clipboard: the same steps and the same boxes as on the screen. */
export function JointBlank({ say, at, sheet, source, neighbours }: JointBlankProps): JSX.Element {
  return (
    <div class="blank">
      <p>
        At {formatLength(at, say.units)}, between{' '}
        {neighbours.map(({ mark, what }) => `${mark} (${what})`).join(' and ')}.{' '}
        <span class="soft">Steps: {source ?? 'no sheet named'}.</span>
      </p>
      <div class="lines">
        <Line of="lot of the contact set" />
        <Line of="lot of the clamps" />
      </div>
      <Drawing label="Steps">
        <table>
          <caption>Steps in order; none is skipped</caption>
          <thead>
            <tr>
              <th scope="col">Step</th>
              <th scope="col">What</th>
              <th scope="col">Done</th>
              <th scope="col">By, time</th>
            </tr>
          </thead>
          <tbody>
            {(sheet.steps ?? []).map((step) => (
              <tr key={step.index}>
                <th scope="row">{step.index + 1}</th>
                <td>
                  {step.text}
                  <StepBoxes step={step} sheet={sheet} />
                </td>
                <td>
                  <Box />
                </td>
                <td />
              </tr>
            ))}
          </tbody>
        </table>
      </Drawing>
      <div class="lines">
        <Line of="accepted by another person, signature" />
        <Line of="day and time" />
        <Line of="reopened: from step, reason, who, when" />
        <Line of="note" />
      </div>
      <Caution />
    </div>
  );
}

function StepBoxes({ step, sheet }: { step: JointStep; sheet: JointSheet }) {
  switch (step.kind) {
    case 'hold':
      return (
        <div>
          <strong>Hold point. Seen seated, end towards the feed and end away from it:</strong>
          <div class="row">
            {sheet.poles.map((pole) => (
              <span key={pole}>
                {pole} <Box /> near <Box /> far
              </span>
            ))}
          </div>
        </div>
      );
    case 'torque':
      return (
        <div>
          {sheet.torqueNm === null ? 'The sheet states no torque.' : `The sheet: ${torque(sheet.torqueNm)}.`}
          <div class="lines">
            <Line of="applied, N·m or lbf·ft" />
            <Line of="tool" />
            <Line of="last day of its calibration" />
          </div>
        </div>
      );
    case 'check':
      return <strong> By another person.</strong>;
    case 'work':
      return null;
  }
}
