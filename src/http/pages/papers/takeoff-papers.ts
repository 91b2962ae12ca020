import type { PaperPart, PaperSheet } from '../../../paper/estimate/paper.ts';
import type { Column, Table } from '../../../paper/pdf/table.ts';
import type { ListedRow, SpareRow, ToolRow } from '../../../paper/workbooks/order-sheets.ts';
import type { OrderRow } from '../../../paper/workbooks/takeoff-workbook.ts';

export interface TakeoffPaperInput {
  readonly job: readonly OrderRow[];
  readonly byLevel: readonly OrderRow[];
  readonly list: readonly ListedRow[];
  readonly spares: readonly SpareRow[];
  readonly tools: readonly ToolRow[];
  /** What is said where the need dates rest on an invented labour book; empty otherwise. */
  readonly invented: string;
}

const text = (title: string, share: number): Column => ({ title, share });
const figure = (title: string, share: number): Column => ({ title, share, align: 'right' });
const COUNTED = [text('Thing', 34), text('Type', 22), text('Length', 14), figure('Quantity', 12), text('Unit', 8)];

/** Takeoff, order list, spares and tools on paper. No money in it. */
export function takeoffSheets({ job, byLevel, list, spares, tools, invented }: TakeoffPaperInput): PaperSheet[] {
  return [
    sheet('Takeoff of the job', [], {
      title: 'Over the job',
      columns: COUNTED,
      rows: job.map(counted),
      none: 'Nothing is counted yet.',
    }),
    sheet('Takeoff by level', [], {
      title: 'By level',
      columns: COUNTED,
      rows: grouped(byLevel),
      none: 'Nothing is counted yet.',
    }),
    sheet('Order list', said(invented), {
      title: 'By floor and need date',
      columns: [
        text('Thing', 28),
        text('For', 11),
        text('Type', 18),
        text('Length', 11),
        figure('Quantity', 9),
        text('Unit', 6),
        text('Marks', 32),
      ],
      rows: ordered(list),
      none: 'Nothing is to be ordered yet.',
    }),
    ...(spares.length === 0 ? [] : [sheet('Waste and spares', [], sparesTable(spares))]),
    ...(tools.length === 0 ? [] : [sheet('Tools of the crews', [], toolsTable(tools))]),
  ];
}

function said(words: string): PaperPart[] {
  return words === '' ? [] : [{ kind: 'text', text: words }];
}

function sheet(title: string, before: readonly PaperPart[], table: Table): PaperSheet {
  return {
    title,
    beside: `${table.rows.filter((row) => Array.isArray(row)).length} lines`,
    parts: [...before, { kind: 'table', table }],
  };
}

function counted({ thing, type, length, quantity, unit }: OrderRow): string[] {
  return [thing, type, length, number(quantity), unit];
}

function grouped(rows: readonly OrderRow[]): Table['rows'] {
  return rows.flatMap((row, index) => [
    ...(row.level === rows[index - 1]?.level ? [] : [{ group: row.level === '' ? 'No level' : row.level }]),
    counted(row),
  ]);
}

function ordered(list: readonly ListedRow[]): Table['rows'] {
  return list.flatMap((row, index) => {
    const before = list[index - 1];
    const isNew = before === undefined || before.order !== row.order || before.level !== row.level;
    const beside = row.orderBy === '' ? row.needed : `needed ${row.needed}, order by ${row.orderBy}`;
    return [
      ...(isNew ? [{ group: `${row.level}, order ${row.order}`, beside }] : []),
      [row.thing, row.purpose, row.type, row.length, number(row.quantity), row.unit, cut(row.marks)],
    ];
  });
}

/** Paper shows so many letters of marks; workbook and CSV have all of them. */
const MARKS = 900;

function cut(marks: string): string {
  return marks.length <= MARKS ? marks : `${marks.slice(0, MARKS)} … all of them are in the workbook`;
}

function sparesTable(spares: readonly SpareRow[]): Table {
  return {
    title: 'Waste, spares by the greater of minimum and percentage, and spares for the owner',
    columns: [
      text('Thing', 26),
      text('Type', 18),
      text('Length', 11),
      figure('Taken in', 9),
      figure('Waste', 8),
      figure('Spares, %', 9),
      figure('At least', 8),
      figure('Spares', 8),
      figure('Owner', 8),
      figure('In all', 9),
      text('Unit', 6),
    ],
    rows: spares.map((row) => [
      row.thing,
      row.type,
      row.length,
      number(row.needed),
      number(row.waste),
      number(row.percent),
      number(row.minimum),
      number(row.spare),
      number(row.owner),
      number(row.needed + row.waste + row.spare + row.owner),
      row.unit,
    ]),
    none: '',
  };
}

function toolsTable(tools: readonly ToolRow[]): Table {
  return {
    title: 'Tools',
    columns: [
      text('Tool', 40),
      figure('For a crew', 10),
      figure('Crews', 8),
      figure('In all', 8),
      text('Which crews', 20),
      text('Note', 24),
    ],
    rows: tools.map(({ tool, perCrew, crews, which, note }) => [
      tool,
      number(perCrew),
      crews === null ? '' : number(crews),
      crews === null ? '' : number(perCrew * crews),
      which,
      note,
    ]),
    none: '',
  };
}

/** Made once: making one for each of many thousands of quantities takes longer than writing them. */
const QUANTITY = new Intl.NumberFormat('en-US', { maximumFractionDigits: 3 });

function number(value: number): string {
  return QUANTITY.format(value);
}
