import type { JSX } from 'preact';
import { lossWords } from '../../../src/domain/layout/covering-loss.ts';
import type { RankedCovering, RunCoverings } from '../../../src/domain/layout/coverings.ts';
import type { PlacedPiece } from '../../../src/domain/layout/result.ts';
import { sayIn } from '../../../src/domain/layout/say.ts';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { type Column, DataTable } from '../../components/data-table.tsx';
import { EmptyState } from '../../components/empty-state.tsx';
import { Part } from '../../components/part.tsx';

export interface CoveringsPartProps {
  readonly coverings: RunCoverings;
  readonly units: UnitSystem;
  readonly currency: string;
  readonly mayMoney: boolean;
}

const PLACES = ['Chosen', 'Second', 'Third'] as const;

/** The covering that was chosen beside the next two, and why those lost: everybody sees the pieces, the office the amounts. */
export function CoveringsPart(props: CoveringsPartProps): JSX.Element {
  const { coverings, compared, held } = props.coverings;
  if (held) return <HeldCovering {...props} />;
  const only = compared ? 'No other covering holds the rules.' : 'There are too many coverings to compare them all.';
  return (
    <Part title="Coverings compared" id="coverings">
      {coverings.length === 0 ? (
        <EmptyState text="No covering holds the rules: see the checks." />
      ) : (
        <>
          <DataTable
            caption="The best coverings, in the order in which they win"
            columns={columnsFor(props)}
            rows={coverings}
            keyOf={(covering) => placeOf(coverings, covering)}
          />
          {coverings.length === 1 && <p class="soft">{only}</p>}
        </>
      )}
    </Part>
  );
}

/** Nothing was chosen by cost where the floor has put sections in, so nothing is said to win. */
function HeldCovering({ coverings, units }: CoveringsPartProps) {
  const [kept] = coverings.coverings;
  return (
    <Part title="Coverings compared" id="coverings">
      <p>
        <strong>Kept to what the floor substituted.</strong> Coverings are not compared: these sections stand because
        the floor put them in, not because they cost least.
      </p>
      {kept !== undefined && <p>Along the run: {piecesInWords(kept.pieces, sayIn(units))}.</p>}
    </Part>
  );
}

function columnsFor({ coverings, units, currency, mayMoney }: CoveringsPartProps): readonly Column<RankedCovering>[] {
  const say = sayIn(units);
  const money = mayMoney ? (minor: number) => formatMoney(Math.round(minor), currency) : null;
  const cost: Column<RankedCovering>[] =
    money === null ? [] : [{ head: 'Cost', kind: 'number', cell: ({ cost }) => money(cost.total) }];
  return [
    { head: 'Covering', kind: 'name', cell: (covering) => placeOf(coverings.coverings, covering) },
    { head: 'Pieces along the run', cell: ({ pieces }) => piecesInWords(pieces, say) },
    { head: 'Joints', kind: 'number', cell: ({ joints }) => String(joints.length) },
    ...cost,
    {
      head: 'Why',
      cell: ({ loss }) => (loss === null ? 'It wins over every other.' : lossWords(loss, say, money)),
    },
  ];
}

function placeOf(all: readonly RankedCovering[], covering: RankedCovering): string {
  return PLACES[all.indexOf(covering)] ?? '';
}

/** "2 × 20'-0", 10'-0", elbow, 5'-0" cut". */
function piecesInWords(pieces: readonly PlacedPiece[], say: (length: number) => string): string {
  const groups: { word: string; count: number }[] = [];
  for (const { kind, from, to } of pieces) {
    const word = kind === 'stock' ? say(to - from) : kind === 'cut' ? `${say(to - from)} cut` : kind;
    const last = groups.at(-1);
    if (last?.word === word) last.count += 1;
    else groups.push({ word, count: 1 });
  }
  return groups.map(({ word, count }) => (count === 1 ? word : `${count} × ${word}`)).join(', ');
}
