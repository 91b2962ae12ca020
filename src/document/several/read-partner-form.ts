import { COORDINATE } from '../../domain/units/parse-length.ts';
import { type Entered, length } from '../form/entries.ts';
import { newLog, readEntry } from '../form/read-entry.ts';
import type { ProjectDocument } from '../job-document.ts';
import type { PartnersAsked } from './plan-partners.ts';
import { naming, type ReadForm } from './read-copy-form.ts';

export const PARTNER_WAYS = ['axis-left', 'axis-right', 'y', 'x', 'beside'] as const;

/** What was typed to make partners. Only the distances of the chosen way are read. */
export function readPartnerForm(
  entered: Entered,
  runs: readonly string[],
  project: Pick<ProjectDocument, 'units' | 'currency'>,
): ReadForm<PartnersAsked> {
  const log = newLog(project);
  const needed = (path: string): number => {
    if ((entered[path] ?? '').trim() === '')
      log.faults.push({ field: path, said: 'This way needs it. Give a distance, such as 300 mm or 1 ft.' });
    return (readEntry(length(path, COORDINATE), path, entered, log) as number | undefined) ?? 0;
  };
  const optional = (path: string) => (readEntry(length(path, COORDINATE), path, entered, log) as number) ?? 0;
  const wayOf = (): PartnersAsked['way'] => {
    switch (entered.way) {
      case 'x':
      case 'y':
        return { kind: entered.way, atMm: needed('way.atMm') };
      case 'beside':
        return { kind: 'beside', xMm: optional('way.xMm'), yMm: optional('way.yMm') };
      default:
        return {
          kind: 'axis',
          side: entered.way === 'axis-right' ? 'right' : 'left',
          awayMm: needed('way.awayMm'),
        };
    }
  };
  return {
    asked: {
      runs: [...runs],
      way: wayOf(),
      names: naming(entered.names),
      supply: naming(entered.supply),
      taps: entered.taps === 'yes',
      pairTaps: entered.pairTaps === 'yes',
      branches: entered.branches === 'yes',
    },
    faults: log.faults,
  };
}
