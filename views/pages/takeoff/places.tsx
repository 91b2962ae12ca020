import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { ButtonLink } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import { EmptyState } from '../../components/empty-state.tsx';
import { Pager, type PagerProps } from '../../components/pager.tsx';
import { sayQuantity } from './counted-from.tsx';

export interface PlacesPageProps {
  readonly words: string;
  readonly quantity: number;
  readonly unit: string;
  readonly units: UnitSystem;
  readonly rows: readonly {
    readonly run: string;
    readonly mark: string;
    readonly at: number;
    readonly href: string | null;
  }[];
  readonly total: number;
  readonly pager: PagerProps | null;
}

/** Every place that one line was counted from. */
export function PlacesPage({ words, quantity, unit, units, rows, total, pager }: PlacesPageProps): JSX.Element {
  return (
    <>
      <DataTable
        caption={words}
        remark={`${sayQuantity(quantity)} ${unit}, counted from ${total === 1 ? 'one place' : `${total.toLocaleString('en-US')} places`}`}
        rows={rows.map((row, index) => ({ ...row, index }))}
        keyOf={(row) => String(row.index)}
        none={<EmptyState text="Nothing in this takeoff is counted on this line: it may have changed since." />}
        columns={[
          {
            head: 'Run',
            kind: 'name',
            cell: (row) => (row.href === null ? row.run : <a href={row.href}>{row.run}</a>),
          },
          { head: 'Mark', cell: (row) => row.mark },
          { head: 'From the feed', kind: 'number', cell: (row) => formatLength(row.at, units) },
        ]}
      />
      {pager !== null && <Pager {...pager} />}
      <p class="soft">Marks of what is not released yet are numbered from the feed.</p>
    </>
  );
}

/** At the head of the page. */
export function PlacesTools({ href }: { href: string }): JSX.Element {
  return <ButtonLink href={href}>Back to the list</ButtonLink>;
}
