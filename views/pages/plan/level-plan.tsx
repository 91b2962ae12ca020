import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { Drawing } from '../../components/drawing.tsx';
import { EmptyState } from '../../components/empty-state.tsx';
import { SelectField } from '../../components/field.tsx';
import { Filter } from '../../components/filter.tsx';
import { MarkLegend } from '../../components/mark.tsx';
import { Part } from '../../components/part.tsx';
import { PrintDrawing } from '../../components/print-drawing.tsx';
import { FloorPlan, type PlanRun, type Window } from '../../drawings/floor-plan.tsx';
import { QUARTERS } from '../../drawings/plan/extent.ts';

export interface LevelPlanPageProps {
  readonly path: string;
  readonly levelName: string;
  readonly units: UnitSystem;
  readonly runs: readonly PlanRun[];
  /** What of the level is shown: "whole", a quarter, or the label of a run. */
  readonly shown: string;
  readonly window: Window | null;
}

/** A level to scale: the whole, a quarter of it or the surroundings of one run, each at an address of its own. */
export function LevelPlanPage(props: LevelPlanPageProps): JSX.Element {
  const { path, levelName, units, runs, shown, window } = props;
  if (runs.length === 0) return <EmptyState text="No run hangs here yet, so there is nothing to draw." />;
  const of = shown === 'whole' ? `Plan of ${levelName}` : `Plan of ${levelName}: ${shown}`;
  return (
    <>
      <Part title={shown === 'whole' ? 'Whole level' : shown} id="plan">
        <Views {...props} />
        <Drawing label={of}>
          <FloorPlan
            level={levelName}
            runs={runs}
            units={units}
            ink="screen"
            width={1180}
            tallest={1100}
            window={window ?? undefined}
            detailed
          />
        </Drawing>
        <MarkLegend of="piece" />
        <Signs shown={shown} />
      </Part>
      <Part title="On paper" id="print">
        <PrintDrawing href={path} units={units} of={`the plan of ${levelName}`} id="plan" />
      </Part>
    </>
  );
}

function Views({ path, runs, shown }: LevelPlanPageProps) {
  return (
    <>
      <nav class="row" aria-label="Parts of the plan">
        {['whole', ...QUARTERS].map((part) => {
          const word = part === 'whole' ? 'whole level' : part;
          if (part === shown)
            return (
              <strong key={part} aria-current="true">
                {word}
              </strong>
            );
          return (
            <a key={part} href={part === 'whole' ? path : `${path}?show=${part}`}>
              {word}
            </a>
          );
        })}
      </nav>
      <Filter action={path} clear={null} label="One run">
        <SelectField
          name="show"
          label="Round one run"
          value={shown}
          options={runs.map(({ id }) => ({ value: id, word: id }))}
        />
      </Filter>
    </>
  );
}

function Signs({ shown }: { shown: string }) {
  return (
    <p class="soft">
      A filled dot is an end feed, a filled square a centre feed, an open dot a tee. Ticks are tap-offs; the arrow shows
      the way they face. Hatching across a run is a wall or floor, crosswise where it holds back fire. Thin broken lines
      are the structure that hangers can be fixed to, with their distance from the level’s origin.{' '}
      {shown === 'whole' && 'A tap-off’s mark stands where it has room: a quarter or one run shows more of them. '}
      Press a run for its page.
    </p>
  );
}
