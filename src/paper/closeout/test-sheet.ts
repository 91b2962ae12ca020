import type { Reading } from '../../domain/quality/insulation/reading.ts';
import type { InsulationReport } from '../../domain/quality/insulation-test.ts';
import type { Book } from '../pdf/book.ts';
import { startPart } from '../pdf/contents.ts';
import { drawFacts, type Fact } from '../pdf/facts.ts';
import { heading, paragraph, sheetTitle } from '../pdf/prose.ts';
import { drawTable, type Row } from '../pdf/table.ts';
import type { RunDossier, TestEntry } from './dossier.ts';
import { remarkWords } from './remark-words.ts';
import { revisionWord } from './run-sheet.ts';
import { decimals, NONE, orNone, type Say } from './say.ts';

/** Every insulation test of the run, newest first: rule, conditions, each pair as read and as judged. */
export function testSheet(book: Book, dossier: RunDossier, say: Say, under: PDFKit.PDFOutline): void {
  if (dossier.tests.length === 0) return;
  const { run } = dossier;
  startPart(
    book,
    { title: 'Insulation tests', of: run.id, revision: revisionWord(dossier) },
    { title: 'Insulation tests', rank: 'bookmark', under },
  );
  sheetTitle(book, `Insulation tests of run ${run.id}`, `${dossier.tests.length} recorded; ${standingWords(dossier)}`);
  for (const test of dossier.tests) drawTest(book, dossier, test, say);
}

export function standingWords({ insulation }: Pick<RunDossier, 'insulation'>): string {
  switch (insulation.kind) {
    case 'passing':
      return 'passing as of this book';
    case 'missing':
      return 'none that stands';
    case 'failed':
      return 'failed';
    case 'incomplete':
      return 'incomplete';
    case 'information-only':
      return 'for information only';
    case 'stale':
      return 'stale: work was recorded since on what the run is connected to';
  }
}

function drawTest(book: Book, dossier: RunDossier, { record, standing, judged }: TestEntry, say: Say): void {
  const verdict = judged.ok ? judged.report.verdict : 'cannot be judged';
  heading(
    book,
    `Test of ${say.time(record.at)}: ${verdict}${standing ? '' : ' (replaced by a later record; does not count)'}`,
    120,
  );
  drawFacts(book, testFacts(dossier, record, judged.ok ? judged.report : null, say), 6);
  if (!judged.ok) {
    paragraph(book, `The readings below cannot be judged: ${judged.refusal.code}.`);
    drawTable(book, rawTable(record.body.readings));
    return;
  }
  const { report } = judged;
  paragraph(book, report.criterion.text, { width: book.frame.width });
  paragraph(book, `Source: ${report.criterion.sources.join('; ')}.`, { size: 7, width: book.frame.width });
  const remarks = report.remarks.map((remark) => remarkWords(remark, book.head.units));
  if (remarks.length > 0) paragraph(book, `Remarks: ${remarks.join('; ')}.`, { width: book.frame.width });
  drawTable(book, pairTable(report));
}

function testFacts(
  { layout }: RunDossier,
  record: TestEntry['record'],
  report: InsulationReport | null,
  say: Say,
): Fact[] {
  const { body, by } = record;
  return [
    ['Tested by', by.name],
    ['Witness', orNone(body.witness)],
    ['Instrument', body.instrument.id],
    ['Calibration due', body.instrument.calibrationDue ?? 'not known'],
    ['Test voltage', `${body.testVoltageV} V DC`],
    ['Held for', body.durationS === null ? NONE : `${body.durationS} s`],
    ['Length of the run', say.length(layout.length)],
    ['Surface temperature', body.surfaceTempC === null ? 'not written down' : `${body.surfaceTempC} °C`],
    ['Factor to 20 °C', decimals(report?.factor ?? null, 3)],
    [
      'Ambient, humidity',
      `${body.ambientTempC === null ? NONE : `${body.ambientTempC} °C`}, ${body.humidityPercent === null ? NONE : `${body.humidityPercent} %`}`,
    ],
    ['Dew point', report === null || report.dewPointC === null ? 'not known' : `${report.dewPointC.toFixed(1)} °C`],
    [
      'Isolated, lifted or taken off',
      body.isolations.length === 0 ? 'nothing written down' : body.isolations.join(', '),
    ],
    ...(body.note === null ? [] : [['Note', body.note] as const]),
  ];
}

function pairTable({ pairs, criterion, verdict }: InsulationReport) {
  return {
    title: 'Pairs',
    columns: [
      { title: 'Pair', share: 36 },
      { title: 'As read', share: 76, align: 'right' },
      { title: 'Working', share: 420 },
      { title: 'Held against the limit, megohm', share: 70, align: 'right' },
      { title: 'Least, megohm', share: 52, align: 'right' },
      { title: 'Verdict', share: 62 },
    ],
    rows: pairs.map(
      (pair): Row => [
        pair.pair,
        readingWords(pair.reading),
        pair.working,
        comparedWords(pair),
        plain(criterion.limitMegohm),
        verdict === 'information-only' && pair.byFigures !== pair.verdict
          ? `information only (by the figures: ${pair.byFigures})`
          : pair.verdict,
      ],
    ),
    none: 'No pair is asked.',
  } as const;
}

function comparedWords({ comparedMegohm, reading }: InsulationReport['pairs'][number]): string {
  if (comparedMegohm === null) return NONE;
  return `${reading.kind === 'value' && reading.comparator === '>' ? '> ' : ''}${plain(comparedMegohm)}`;
}

const FIGURES = new Intl.NumberFormat('en-US', { maximumSignificantDigits: 4 });

function plain(megohm: number): string {
  return FIGURES.format(megohm);
}

/** A reading as it was written, with its comparator and unit. */
export function readingWords(reading: Reading): string {
  switch (reading.kind) {
    case 'value':
      return `${reading.comparator === '>' ? '> ' : ''}${reading.written} ${reading.unit}`;
    case 'blank':
      return 'no reading';
    case 'not-measured':
      return 'not measured';
    case 'meter-fault':
      return 'meter fault';
  }
}

function rawTable(readings: TestEntry['record']['body']['readings']) {
  return {
    title: 'Pairs as read',
    part: { from: 0, width: 0.4 },
    columns: [
      { title: 'Pair', share: 30 },
      { title: 'As read', share: 70 },
    ],
    rows: readings.map(({ pair, reading }): Row => [pair, readingWords(reading)]),
    none: 'No reading.',
  } as const;
}
