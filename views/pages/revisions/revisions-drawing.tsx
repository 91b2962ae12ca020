import type { JSX } from 'preact';
import type { RunLayout } from '../../../src/domain/layout/result.ts';
import type { Run, UnitSystem } from '../../../src/domain/model.ts';
import type { RevisionDifference } from '../../../src/domain/revision/difference.ts';
import { Drawing } from '../../components/drawing.tsx';
import { planStrip } from '../../drawings/strip/plan.ts';
import { Strip, type StripProps } from '../../drawings/strip.tsx';
import { changeRecord } from './change-record.ts';

export interface ComparedSide {
  readonly title: string;
  readonly run: Run;
  readonly layout: RunLayout;
}

/** Both strips one above the other at one scale, each thing inked by what the step does to it. */
export function RevisionsDrawing(props: {
  readonly before: ComparedSide;
  readonly after: ComparedSide;
  readonly difference: RevisionDifference;
  readonly units: UnitSystem;
}): JSX.Element {
  const { before, after, difference, units } = props;
  const strip = (side: 'before' | 'after'): StripProps => ({
    run: props[side].run,
    layout: props[side].layout,
    record: changeRecord(props[side].layout, difference, side),
    units,
    ink: 'screen',
    idPrefix: side,
  });
  // The larger of the two scales that the strips would have alone: neither is then too dense to be read.
  const scale = Math.max(planStrip(strip('before')).scale, planStrip(strip('after')).scale);
  return (
    <div class="stack">
      <p>
        <strong>+</strong> hatched: comes. <strong>−</strong> struck through: leaves. <strong>→</strong> half filled:
        the same at another distance. <strong>±</strong> half filled: changed where it stands. Thin outline without a
        sign: stays.
      </p>
      <h3>{before.title}</h3>
      <Drawing label={`Strip before, ${before.title}`}>
        <Strip {...strip('before')} scale={scale} />
      </Drawing>
      <h3>{after.title}</h3>
      <Drawing label={`Strip after, ${after.title}`}>
        <Strip {...strip('after')} scale={scale} />
      </Drawing>
    </div>
  );
}
