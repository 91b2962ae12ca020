import { readingWords } from '../closeout/test-sheet.ts';
import { type Cell, mm, type Register } from './register.ts';

/** Each pair of each insulation test, as read and as judged. */
export const tests: Register = {
  file: 'registers/tests.csv',
  columns: [
    'run',
    'test',
    'tested at',
    'tested by',
    'witness',
    'stands',
    'rule',
    'source',
    'length mm',
    'test voltage V',
    'held s',
    'instrument',
    'calibration due',
    'surface °C',
    'ambient °C',
    'humidity %',
    'pair',
    'reading',
    'as written',
    'unit',
    'at 20 °C megohm',
    'held against limit megohm',
    'least megohm',
    'pair verdict',
    'test verdict',
  ],
  rowsOf: function* ({ run, tests: entries, layout }) {
    for (const { record, standing, judged } of entries) {
      const { body, by } = record;
      const report = judged.ok ? judged.report : null;
      const head: Cell[] = [
        run.id,
        record.id,
        record.at,
        by.name,
        body.witness,
        standing ? 'yes' : 'no',
        body.rule,
        report?.criterion.sources.join('; ') ?? null,
        mm(layout.length),
        body.testVoltageV,
        body.durationS,
        body.instrument.id,
        body.instrument.calibrationDue,
        body.surfaceTempC,
        body.ambientTempC,
        body.humidityPercent,
      ];
      const verdict = report?.verdict ?? 'cannot be judged';
      if (report === null) {
        for (const { pair, reading } of body.readings)
          yield [...head, pair, ...readingCells(reading), null, null, null, null, verdict];
      }
      for (const pair of report?.pairs ?? []) {
        yield [
          ...head,
          pair.pair,
          ...readingCells(pair.reading),
          rounded(pair.at20Megohm),
          rounded(pair.comparedMegohm),
          rounded(report?.criterion.limitMegohm ?? null),
          pair.verdict,
          verdict,
        ];
      }
    }
  },
};

type Reading = Parameters<typeof readingWords>[0];

/** Comparator, digits and unit as they were written; a word where there is no figure. */
function readingCells(reading: Reading): Cell[] {
  return reading.kind === 'value'
    ? [reading.comparator === '>' ? 'more than' : 'is', reading.written, reading.unit]
    : [null, readingWords(reading), null];
}

function rounded(megohm: number | null): number | null {
  return megohm === null ? null : Number(megohm.toPrecision(6));
}
