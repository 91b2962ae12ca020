import type { JSX } from 'preact';
import type { UnitSystem } from '../../src/domain/model.ts';
import type { RevisionDifference } from '../../src/domain/revision/difference.ts';
import { Button } from '../components/button.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { type Option, SelectField } from '../components/field.tsx';
import { Part } from '../components/part.tsx';
import { RevisionChanges } from './revisions/revision-changes.tsx';
import { type ComparedSide, RevisionsDrawing } from './revisions/revisions-drawing.tsx';

export interface RevisionsPageProps {
  readonly href: string;
  readonly units: UnitSystem;
  readonly options: readonly Option[];
  readonly a: string;
  readonly b: string;
  /** null while nothing can be compared: one revision alone, or none. */
  readonly compared: {
    readonly before: ComparedSide;
    readonly after: ComparedSide;
    readonly difference: RevisionDifference;
  } | null;
}

/** Two revisions of a run beside each other: in words and as a drawing. The address carries which. */
export function RevisionsPage(props: RevisionsPageProps): JSX.Element {
  const { href, units, options, a, b, compared } = props;
  if (compared === null)
    return <EmptyState text="There is nothing to compare yet: the run was not released, or has not changed since." />;
  return (
    <>
      <form class="form" method="get" action={href}>
        <div class="row">
          <SelectField name="a" label="From" value={a} options={options} />
          <SelectField name="b" label="To" value={b} options={options} />
          <Button>Compare</Button>
        </div>
      </form>
      <Part title="What differs" id="difference">
        <RevisionChanges difference={compared.difference} units={units} />
      </Part>
      <Part title="Both strips at one scale" id="drawing">
        <RevisionsDrawing {...compared} units={units} />
      </Part>
    </>
  );
}
