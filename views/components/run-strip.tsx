import type { JSX } from 'preact';
import { formatLength } from '../../src/domain/units/format-length.ts';
import { thingsOf } from '../drawings/strip/things.ts';
import { Strip, type StripProps } from '../drawings/strip.tsx';
import { DataTable } from './data-table.tsx';
import { Drawing } from './drawing.tsx';
import { MarkLegend } from './mark.tsx';

/** The strip on a page: the drawing, what its inks mean, and the same things as a table for those who read them better. */
export function RunStrip(props: Omit<StripProps, 'ink'>): JSX.Element {
  const { run, units } = props;
  return (
    <div class="stack">
      <Drawing label={`Strip of run ${run.id}`}>
        <Strip {...props} ink="screen" />
      </Drawing>
      <MarkLegend of="piece" />
      <details>
        <summary>The strip as a table</summary>
        <DataTable
          caption={`Run ${run.id} from the feed on`}
          rows={thingsOf(props)}
          keyOf={(thing) => `${thing.kind}-${thing.mark}`}
          columns={[
            {
              head: 'Mark',
              kind: 'name',
              cell: (thing) => (thing.href === null ? thing.mark : <a href={thing.href}>{thing.mark}</a>),
            },
            { head: 'At', kind: 'number', cell: (thing) => formatLength(thing.from, units) },
            { head: 'What', cell: (thing) => thing.what },
            { head: 'State', cell: (thing) => thing.word },
          ]}
        />
      </details>
    </div>
  );
}
