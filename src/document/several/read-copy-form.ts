import { COORDINATE } from '../../domain/units/parse-length.ts';
import { type Entered, type EntryFault, length, number } from '../form/entries.ts';
import { newLog, readEntry } from '../form/read-entry.ts';
import type { ProjectDocument } from '../job-document.ts';
import type { CopyAsked } from './plan-copies.ts';

export interface ReadForm<Asked> {
  readonly asked: Asked;
  /** With any of these `asked` is not what was meant. */
  readonly faults: readonly EntryFault[];
}

type Project = Pick<ProjectDocument, 'units' | 'currency'>;

/** What was typed to copy runs. An empty pitch is 0, an empty naming the usual one. */
export function readCopyForm(
  entered: Entered,
  runs: readonly string[],
  levels: readonly string[],
  project: Project,
): ReadForm<CopyAsked> {
  const log = newLog(project);
  const read = (entry: ReturnType<typeof number>) => readEntry(entry, entry.path, entered, log) as number | undefined;
  const step = read(number('step'));
  if (step !== undefined && !(Number.isInteger(step) && step >= 1 && step <= 10_000))
    log.faults.push({ field: 'step', said: `${step} cannot be counted on by. Write a whole number, 1 to 10,000.` });
  return {
    asked: {
      runs: [...runs],
      rows: read(number('rows')) ?? 0,
      pitch: {
        xMm: read(length('pitch.xMm', COORDINATE)) ?? 0,
        yMm: read(length('pitch.yMm', COORDINATE)) ?? 0,
      },
      levels: [...levels],
      step: step ?? null,
      names: naming(entered.names),
      supply: naming(entered.supply),
      taps: entered.taps === 'yes',
      branches: entered.branches === 'yes',
    },
    faults: log.faults,
  };
}

/** An empty field is the usual naming. */
export function naming(text: string | undefined): string | null {
  const typed = (text ?? '').trim();
  return typed === '' ? null : typed;
}
