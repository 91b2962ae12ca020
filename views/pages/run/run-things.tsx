import type { ComponentChildren, JSX } from 'preact';
import type { PlacedPiece, RunLayout } from '../../../src/domain/layout/result.ts';
import type { BuswayType, Run, Tap, UnitSystem } from '../../../src/domain/model.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../../src/domain/quality/states.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { formatWeight } from '../../../src/domain/units/quantities.ts';
import { type CardOf, cardHref } from '../../components/card-href.ts';
import { DataTable } from '../../components/data-table.tsx';
import { Mark } from '../../components/mark.tsx';
import { Part } from '../../components/part.tsx';
import { handWords, pieceWord } from '../../drawings/strip/words.ts';

interface Item<State> {
  readonly id: string;
  readonly mark: string;
  readonly state: State;
}

export interface ReleasedRun {
  readonly number: number;
  readonly run: Run;
  readonly layout: RunLayout;
  readonly pieces: readonly (Item<PieceState> & { readonly lot: string | null })[];
  readonly joints: readonly Item<JointState>[];
  readonly supports: readonly (Item<SupportState> & { readonly measured: Length | null })[];
  readonly taps: readonly (Item<TapState> & { readonly at: Length; readonly tap: Tap })[];
}

export interface RunThingsProps {
  readonly jobId: string;
  readonly units: UnitSystem;
  readonly run: Run;
  readonly type: BuswayType;
  readonly layout: RunLayout;
  readonly released: ReleasedRun | null;
}

/** What the run is made of, thing by thing: of the released revision where there is one, else of the design. */
export function RunThings(props: RunThingsProps): JSX.Element {
  return (
    <>
      <div class="columns">
        <Pieces {...props} />
        <Joints {...props} />
      </div>
      <Hangers {...props} />
      <TapOffs {...props} />
    </>
  );
}

const draft = (letter: string, index: number) => `${letter}${String(index + 1).padStart(2, '0')}`;

function link(jobId: string, of: CardOf, item: { id: string; mark: string } | undefined, draftMark: string) {
  if (item === undefined) return draftMark;
  return <a href={cardHref(jobId, of, item.id)}>{item.mark.slice(item.mark.lastIndexOf('-') + 1)}</a>;
}

function Pieces({ jobId, units, layout: now, released }: RunThingsProps) {
  const layout = released?.layout ?? now;
  const rows = layout.pieces.map((piece, index) => ({ piece, item: released?.pieces[index], index }));
  return (
    <Part title="Pieces" id="pieces">
      <DataTable
        caption="Pieces from the feed on"
        remark={String(rows.length)}
        rows={rows}
        narrow="scrolls"
        keyOf={(row) => String(row.index)}
        none={<p class="soft">No sections: see the checks.</p>}
        columns={[
          { head: 'Piece', kind: 'name', cell: ({ item, index }) => link(jobId, 'piece', item, draft('P', index)) },
          { head: 'What', cell: ({ piece }) => whatOf(piece) },
          { head: 'Length', kind: 'number', cell: ({ piece }) => formatLength(piece.to - piece.from, units) },
          { head: 'From', kind: 'number', cell: ({ piece }) => formatLength(piece.from, units) },
          { head: 'State', cell: ({ item }) => <Mark state={item?.state ?? 'planned'} /> },
          ...(released?.pieces.some((item) => item.lot !== null)
            ? [{ head: 'Lot', cell: ({ item }: (typeof rows)[number]) => item?.lot ?? '' }]
            : []),
        ]}
      />
    </Part>
  );
}

function whatOf(piece: PlacedPiece): string {
  return piece.hand === null ? pieceWord(piece.kind) : `${pieceWord(piece.kind)}, ${handWords(piece.hand)}`;
}

function Joints({ jobId, units, layout: now, released }: RunThingsProps) {
  const layout = released?.layout ?? now;
  const rows = layout.joints.map((joint, index) => ({ joint, item: released?.joints[index], index }));
  return (
    <Part title="Joints" id="joints">
      <DataTable
        caption="Joints from the feed on"
        remark={String(rows.length)}
        rows={rows}
        narrow="scrolls"
        keyOf={(row) => String(row.index)}
        none={<p class="soft">No joints.</p>}
        columns={[
          { head: 'Joint', kind: 'name', cell: ({ item, index }) => link(jobId, 'joint', item, draft('J', index)) },
          { head: 'At', kind: 'number', cell: ({ joint }) => formatLength(joint.at, units) },
          { head: 'State', cell: ({ item }) => <Mark state={item?.state ?? 'open'} /> },
        ]}
      />
    </Part>
  );
}

function Hangers({ jobId, units, run: nowRun, layout: now, released }: RunThingsProps) {
  const layout = released?.layout ?? now;
  const capacity = (released?.run ?? nowRun).supportCapacityKg;
  const rows = layout.supports.map((support, index) => ({ support, item: released?.supports[index], index }));
  return (
    <Part title="Hangers" id="hangers">
      <DataTable
        caption="Hangers from the feed on"
        remark={`${rows.length}, ${capacity === null ? 'capacity unknown' : `capacity ${formatWeight(capacity, units)}`}`}
        rows={rows}
        narrow="scrolls"
        keyOf={(row) => String(row.index)}
        none={<p class="soft">No hangers are laid out: see the checks.</p>}
        columns={[
          { head: 'Hanger', kind: 'name', cell: ({ item, index }) => link(jobId, 'support', item, draft('H', index)) },
          { head: 'Planned at', kind: 'number', cell: ({ support }) => formatLength(support.at, units) },
          {
            head: 'Measured at',
            kind: 'number',
            cell: ({ item }) => (item?.measured == null ? '' : formatLength(item.measured, units)),
          },
          { head: 'Load, simple spans', kind: 'number', cell: ({ support }) => formatWeight(support.loadKg, units) },
          {
            head: 'Load, continuous beam',
            kind: 'number',
            cell: ({ support }) => formatWeight(support.continuousLoadKg, units),
          },
          { head: 'State', cell: ({ item }) => <Mark state={item?.state ?? 'planned'} /> },
        ]}
      />
      <details>
        <summary>How the loads are worked</summary>
        <div class="stack">
          <p class="formula">
            simple spans: busway weight × (half the span before + half the span after) + each tap-off by the lever rule
          </p>
          <p class="formula">
            continuous beam: reactions of one straight beam over all hangers, by the three-moment equation
          </p>
          <p class="soft">
            With all planned tap-offs on. Weights as the sheet and the tap-offs state them; what is not stated counts
            nought, with a warning. Neither is a sealed design.
          </p>
        </div>
      </details>
    </Part>
  );
}

interface TapRow {
  readonly tap: Tap;
  readonly at: Length;
  readonly nearestLegal: Length | null;
  readonly item: Item<TapState> | undefined;
}

function tapRows({ run, layout, released }: RunThingsProps): TapRow[] {
  if (released === null)
    return layout.taps.flatMap((placed) => {
      const tap = run.taps.find((one) => one.id === placed.id);
      return tap === undefined ? [] : [{ tap, at: placed.at, nearestLegal: placed.nearestLegal, item: undefined }];
    });
  return released.taps.map((item) => ({
    tap: item.tap,
    at: item.at,
    nearestLegal: released.layout.taps.find((placed) => placed.id === item.mark)?.nearestLegal ?? null,
    item,
  }));
}

function TapOffs(props: RunThingsProps) {
  const { jobId, units } = props;
  const rows = tapRows(props);
  return (
    <Part title="Tap-offs" id="tap-offs">
      <DataTable
        caption="Tap-offs from the feed on"
        remark={String(rows.length)}
        rows={rows}
        narrow="scrolls"
        keyOf={(row) => row.tap.id}
        none={<p class="soft">No tap-offs.</p>}
        columns={[
          {
            head: 'Tap-off',
            kind: 'name',
            cell: ({ item, tap }) =>
              item === undefined ? tap.id : <a href={cardHref(jobId, 'tap', item.id)}>{tap.id}</a>,
          },
          {
            head: 'At',
            kind: 'number',
            cell: ({ at, nearestLegal }) => (
              <>
                {formatLength(at, units)}
                {nearestLegal !== null && <NearestLegal at={nearestLegal} units={units} />}
              </>
            ),
          },
          { head: 'Phases', cell: ({ tap }) => `${tap.phases}${tap.neutral ? '-N' : ''}` },
          { head: 'Device', kind: 'number', cell: ({ tap }) => `${tap.deviceA} A` },
          { head: 'Load', kind: 'number', cell: ({ tap }) => loadOf(tap) },
          { head: 'Serves', cell: ({ tap }) => servesOf(tap) },
          { head: 'State', cell: ({ item }) => <Mark state={item?.state ?? 'planned'} /> },
        ]}
      />
    </Part>
  );
}

function NearestLegal({ at, units }: { at: Length; units: UnitSystem }): ComponentChildren {
  return <div class="stop">nearest legal place {formatLength(at, units)}</div>;
}

function loadOf({ load }: Tap): string {
  return load.kind === 'VA' ? `${load.va.toLocaleString('en-US')} VA` : `${load.amperes} A`;
}

function servesOf({ serves, pair }: Tap): string {
  const isSaid = pair === null || serves?.includes(pair);
  return [serves, isSaid ? null : `pair ${pair}`].filter(Boolean).join(', ');
}
