import type { LabourLine } from '../domain/labour/result.ts';
import type { FactorName } from '../domain/model.ts';
import { toMm } from '../domain/units/length.ts';
import { writeTable } from './lists/write-table.ts';

const FACTORS: readonly FactorName[] = ['height', 'congestion', 'storey', 'live'];
const HEADINGS = [
  'level',
  'run',
  'activity',
  'note',
  'length mm',
  'pieces of work',
  'quantity',
  'unit',
  'base low h',
  'base likely h',
  'base high h',
  ...FACTORS.map((factor) => `${factor} %`),
  'conditions of the job',
  'condition factor',
  'repeat',
  'learning factor',
  'non-productive factor',
  'hours',
  'labour book',
];

/** Every line of the hours with all that went into it, and the labour book that it came from; nothing is rounded. */
export function hoursCsv(lines: readonly LabourLine[], book: string): string {
  return writeTable(
    HEADINGS,
    lines.map((line) => [...cellsOf(line), book]),
  );
}

function cellsOf(line: LabourLine): string[] {
  const percent = (name: FactorName) => String(line.factors.find((factor) => factor.name === name)?.percent ?? '');
  return [
    line.level ?? '',
    line.run ?? '',
    line.activity,
    line.note ?? '',
    line.length === null ? '' : String(toMm(line.length)),
    String(line.pieces),
    String(line.quantity),
    line.unit,
    String(line.base.low),
    String(line.base.likely),
    String(line.base.high),
    ...FACTORS.map(percent),
    line.factors
      .filter(({ name }) => !FACTORS.some((known) => known === name))
      .map(({ name, percent: added }) => `${name} ${added} %`)
      .join('; '),
    String(line.conditionFactor),
    line.repeat === null ? '' : String(line.repeat),
    String(line.learningFactor),
    String(line.nonProductiveFactor),
    String(line.hours),
  ];
}
