// biome-ignore-all lint/a11y/noRedundantRoles: once CSS stacks the rows, some browsers forget their roles; said here they stay.
import type { ComponentChildren, JSX } from 'preact';

export interface Column<Row> {
  readonly head: string;
  /** `name` makes the cell the header of its row; `number` aligns it to the right. */
  readonly kind?: 'name' | 'text' | 'number';
  readonly cell: (row: Row) => ComponentChildren;
  /** Where a press on the head sorts to, and how the table is sorted by it now. */
  readonly sort?: { readonly href: string; readonly now: 'up' | 'down' | 'no' };
  /** Under the column, in the last row. */
  readonly foot?: ComponentChildren;
}

export interface DataTableProps<Row> {
  readonly caption: string;
  /** Behind the caption, softer: "431 rows". */
  readonly remark?: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  /** On a phone: each row a block of its own (`stacks`), or the table in a region that scrolls sideways (`scrolls`). */
  readonly narrow?: 'stacks' | 'scrolls';
  readonly id?: string;
  /** Shown instead of an empty body. */
  readonly none?: ComponentChildren;
}

/** A table of records: caption, column and row headers, figures to the right, heads that stay in sight. */
export function DataTable<Row>(props: DataTableProps<Row>): JSX.Element {
  const { caption, columns, rows, keyOf, narrow = 'stacks', id } = props;
  if (rows.length === 0 && props.none !== undefined) return <>{props.none}</>;
  const hasFoot = columns.some((column) => column.foot !== undefined);
  return (
    <TableRegion narrow={narrow} caption={caption}>
      <table id={id} role="table">
        <caption>
          {caption}
          {props.remark !== undefined && <span class="soft"> · {props.remark}</span>}
        </caption>
        <thead role="rowgroup">
          <tr role="row">
            {columns.map((column) => (
              <Head key={column.head} column={column} />
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {rows.map((row) => (
            <tr key={keyOf(row)} role="row">
              {columns.map((column) => (
                <Cell key={column.head} column={column}>
                  {column.cell(row)}
                </Cell>
              ))}
            </tr>
          ))}
        </tbody>
        {hasFoot && (
          <tfoot role="rowgroup">
            <tr role="row">
              {columns.map((column) => (
                <Cell key={column.head} column={column}>
                  {column.foot}
                </Cell>
              ))}
            </tr>
          </tfoot>
        )}
      </table>
    </TableRegion>
  );
}

/** A region that scrolls can be reached by keyboard and says what it is. */
function TableRegion(props: { narrow: 'stacks' | 'scrolls'; caption: string; children: ComponentChildren }) {
  if (props.narrow === 'stacks') return <div class="table stacks">{props.children}</div>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard (WCAG 2.1.1).
    <section class="table scrolls" tabIndex={0} aria-label={`${props.caption}, scrolls sideways`}>
      {props.children}
    </section>
  );
}

function Head<Row>({ column }: { column: Column<Row> }) {
  const { head, kind, sort } = column;
  return (
    <th scope="col" role="columnheader" class={kind === 'number' ? 'num' : undefined} aria-sort={ariaSort(sort?.now)}>
      {sort === undefined ? (
        head
      ) : (
        <a href={sort.href}>
          {head}
          {sort.now !== 'no' && <span aria-hidden="true">{sort.now === 'up' ? ' ▲' : ' ▼'}</span>}
        </a>
      )}
    </th>
  );
}

function ariaSort(now: 'up' | 'down' | 'no' | undefined): 'ascending' | 'descending' | undefined {
  if (now === 'up') return 'ascending';
  return now === 'down' ? 'descending' : undefined;
}

function Cell<Row>({ column, children }: { column: Column<Row>; children: ComponentChildren }) {
  const { head, kind } = column;
  if (kind === 'name' && children !== undefined)
    return (
      <th scope="row" role="rowheader" data-label={head}>
        {wrapped(children)}
      </th>
    );
  return (
    <td role="cell" class={kind === 'number' ? 'num' : undefined} data-label={head}>
      {wrapped(children)}
    </td>
  );
}

/** One box beside the label when rows are stacked; nothing at all when the cell is empty. */
function wrapped(children: ComponentChildren): ComponentChildren {
  return children === undefined || children === null || children === '' ? null : <div>{children}</div>;
}
