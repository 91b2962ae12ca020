import type { PairNote } from '../../../../src/domain/quality/insulation/pair-result.ts';
import type { Reading } from '../../../../src/domain/quality/insulation/reading.ts';
import type { InsulationReport } from '../../../../src/domain/quality/insulation-test.ts';
import { DataTable } from '../../../components/data-table.tsx';
import { verdictWord } from '../../../words/run-status.ts';

export function Pairs({ report }: { report: InsulationReport }) {
  return (
    <DataTable
      caption="Pairs"
      remark={report.factor === null ? 'no surface temperature' : `× ${report.factor.toFixed(3)} to 20 °C`}
      rows={report.pairs}
      keyOf={(row) => row.pair}
      columns={[
        { head: 'Pair', kind: 'name', cell: (row) => row.pair },
        { head: 'As read', kind: 'number', cell: (row) => readingWords(row.reading) },
        {
          head: 'Verdict',
          cell: (row) =>
            row.byFigures === 'pass' ? (
              verdictWord(row.verdict)
            ) : (
              <strong class="stop">
                {verdictWord(row.verdict)}
                {row.note !== null && `, ${NOTES[row.note]}`}
              </strong>
            ),
        },
        { head: 'Working', cell: (row) => row.working },
      ]}
    />
  );
}

const NOTES: Readonly<Record<PairNote, string>> = {
  missing: 'no reading',
  'not-measured': 'not measured',
  'meter-fault': 'meter fault',
  'no-temperature': 'no surface temperature',
  'bound-below-limit': 'the bound itself is below the limit: use a meter that shows more',
  'below-limit': 'below the limit',
  'bond-not-lifted': '0.00 usually means that the neutral-to-ground bond was not lifted',
};

/** As it stands on the sheet: a bound is not a value, and a blank is neither. */
function readingWords(reading: Reading): string {
  switch (reading.kind) {
    case 'value':
      return `${reading.comparator === '>' ? '> ' : ''}${reading.written} ${reading.unit}`;
    case 'blank':
      return 'blank';
    case 'not-measured':
      return reading.reason === null ? 'not measured' : `not measured: ${reading.reason}`;
    case 'meter-fault':
      return reading.note === null ? 'meter fault' : `meter fault: ${reading.note}`;
  }
}
