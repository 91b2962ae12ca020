import type { JSX } from 'preact';
import type { PathPoint, RunLayout } from '../../../src/domain/layout/result.ts';
import type { Run, UnitSystem } from '../../../src/domain/model.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { Drawing } from '../../components/drawing.tsx';
import { FindingList } from '../../components/finding-list.tsx';
import { Money } from '../../components/money.tsx';
import { Sign } from '../../components/sign.tsx';
import { FloorPlan } from '../../drawings/floor-plan.tsx';
import { Strip } from '../../drawings/strip.tsx';
import { entryId, runEntryWord } from '../../words/run-entries.ts';
import { FacingWords } from '../run/facing-words.tsx';
import type { SheetFault } from '../run-edit.tsx';
import { GROUP_WORDS, type PasteGroup } from './rows-of.tsx';

interface Word {
  readonly field: string;
  readonly said: string;
}

export interface TypedRunProps {
  readonly units: UnitSystem;
  readonly drawn: {
    readonly run: Run;
    readonly layout: RunLayout;
    readonly parent: { readonly run: Run; readonly path: readonly PathPoint[] } | null;
  } | null;
  /** null for those who may not see money. */
  readonly cost: { readonly minor: number | null; readonly currency: string } | null;
  readonly faults: readonly Word[];
  readonly notes: readonly Word[];
  readonly tapFaults: readonly SheetFault[];
  readonly pasteFaults: readonly (SheetFault & { readonly group: PasteGroup })[];
  readonly filled: Readonly<Partial<Record<PasteGroup, number>>>;
  /** Nothing was typed yet. */
  readonly fresh?: 'saved' | 'blank';
}

/** The run as it is typed, drawn while typing; without script when asked for. */
export function DrawnRun(props: TypedRunProps & { readonly href: string }): JSX.Element {
  return (
    <section class="part drawn" id="drawing" aria-labelledby="drawing-head">
      <div class="part-head">
        <h2 id="drawing-head">Drawing</h2>
        <button class="button plain" type="submit" formaction={`${props.href}#drawing`} formNoValidate data-unscripted>
          Show drawing
        </button>
      </div>
      <div
        id="run-drawing"
        hx-post={props.href}
        hx-trigger='input from:"closest form" delay:300ms, rows-pasted'
        hx-swap="none"
        hx-sync="this:replace"
      >
        <div id="typed-words">
          <TypedWords {...props} />
        </div>
        <div id="drawn" class="stack">
          <DrawnParts {...props} />
        </div>
      </div>
    </section>
  );
}

/** What is wrong or worth knowing about what was typed; a script of ours puts each word beside its field too. */
export function TypedWords(props: TypedRunProps): JSX.Element {
  const { faults, notes, tapFaults, pasteFaults } = props;
  const cells = [
    ...pasteFaults.map((fault) => ({ ...fault, list: GROUP_WORDS[fault.group], field: `paste.${fault.group}` })),
    ...tapFaults.map((fault) => ({ ...fault, list: 'Tap-offs', field: 'taps' })),
  ];
  return (
    <>
      <p role="status" class="soft">
        {standing(props, faults.length + cells.length)}
      </p>
      <ul class="typed">
        {faults.map(({ field, said }) => (
          <li key={field} class="fault" data-field={entryId(field)} data-said={said}>
            <Sign of="stop" /> <a href={`#${entryId(field)}`}>{runEntryWord(field)}</a>: {said}
          </li>
        ))}
        {cells.map(({ list, field, row, column, problem, remedy }) => (
          <li key={`${field} ${row} ${column}`} class="fault">
            <Sign of="stop" />{' '}
            <a href={`#${entryId(field)}`}>
              {list}
              {row !== null && `, row ${row}`}
              {column !== null && `, ${column}`}
            </a>
            : {problem} {remedy}
          </li>
        ))}
        {notes.map(({ field, said }) => (
          <li key={field} class="reading" data-field={entryId(field)} data-said={said}>
            {runEntryWord(field)} {said}
          </li>
        ))}
      </ul>
    </>
  );
}

function standing({ fresh, drawn, filled }: TypedRunProps, wrong: number): string {
  if (fresh === 'blank') return 'Nothing is drawn yet: the first leg has no length.';
  if (fresh === 'saved') return 'As saved.';
  if (drawn === null)
    return `Not drawn anew: ${wrong === 1 ? 'one entry is' : `${wrong} entries are`} to put right. Nothing typed is lost.`;
  const rows = Object.entries(filled).map(([group, count]) => `${GROUP_WORDS[group as PasteGroup]}: ${count} pasted.`);
  return ['As typed; nothing is saved yet.', ...rows].join(' ');
}

/** Figures, strip, plan and findings. Nothing where there is no run to draw. */
export function DrawnParts({ drawn, cost, units }: TypedRunProps): JSX.Element {
  if (drawn === null) return <span hidden />;
  const { run, layout, parent } = drawn;
  const paths = nearOrigin([layout.path, ...(parent === null ? [] : [parent.path])]);
  return (
    <div class="drawings">
      <div class="stack">
        <p class="row figures">
          <span>
            <b>{formatLength(layout.length, units)}</b> long
          </span>
          {layout.ok ? (
            <>
              <span>
                <b>{layout.pieces.length}</b> pieces
              </span>
              <span>
                <b>{layout.joints.length}</b> joints
              </span>
              <span>
                <b>{layout.supports.length}</b> hangers
              </span>
            </>
          ) : (
            <span>not laid out</span>
          )}
          <span>
            <b>{layout.taps.length}</b> tap-offs
          </span>
          {cost !== null && layout.ok && (
            <span>
              <Money {...cost} /> <span class="soft">pieces and joints</span>
            </span>
          )}
        </p>
        <FacingWords layout={layout} />
        {layout.findings.length > 0 && <FindingList findings={layout.findings} units={units} />}
        <Drawing label={`Strip of run ${run.id}`}>
          <Strip run={run} layout={layout} units={units} ink="screen" idPrefix="typed" />
        </Drawing>
      </div>
      <Drawing label={`Plan of run ${run.id}`}>
        <FloorPlan
          level={run.level}
          units={units}
          ink="screen"
          width={340}
          tallest={300}
          runs={[
            ...(parent === null
              ? []
              : [{ id: parent.run.id, conductorSide: parent.run.conductorSide, path: paths[1] ?? [] }]),
            {
              id: run.id,
              conductorSide: run.conductorSide,
              path: paths[0] ?? [],
              taps: layout.taps.map((tap) => tap.at),
            },
          ]}
        />
      </Drawing>
    </div>
  );
}

/** A plan shows its origin too, and one run may stand far from it: moved beside it, it is drawn as large as it can be. */
function nearOrigin(paths: readonly (readonly PathPoint[])[]): readonly (readonly PathPoint[])[] {
  const points = paths.flat();
  const [left, low] = [Math.min(...points.map(({ x }) => x)), Math.min(...points.map(({ y }) => y))];
  return paths.map((path) => path.map((point) => ({ ...point, x: point.x - left, y: point.y - low })));
}
