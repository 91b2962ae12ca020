import { toMm } from '../../domain/units/length.ts';
import { DISTANCE, parseLength } from '../../domain/units/parse-length.ts';
import type { EntryLog } from '../form/read-entry.ts';
import { writeMm } from '../lists/write-mm.ts';

/**
 * A length with the figures that hold from it or up to it, as `12'-0": 10` or `5'-0": 0.34 / 0.4 / 0.56`; where the field is for
 * rated currents too, one of these or both: `250 A: 0.4 / 0.5 / 0.7`, `250 A, 5'-0": 0.34 / 0.4 / 0.56`.
 */
export interface Step {
  readonly amperes?: number | undefined;
  readonly mm?: number | undefined;
  readonly figures: readonly number[];
}

/** Steps as the text of one field, separated by `;`. */
export function writeSteps(steps: readonly Step[], units: EntryLog['units']): string {
  return steps
    .map(({ amperes, mm, figures }) => {
      const upTo = [amperes === undefined ? '' : `${amperes} A`, writeMm(mm, units)].filter(Boolean).join(', ');
      return `${upTo}: ${figures.join(' / ')}`;
    })
    .join('; ');
}

/** The steps of a field; undefined where one cannot be read, which the log then tells. */
export function readSteps(
  typed: string,
  {
    field,
    count,
    example,
    currents,
  }: {
    readonly field: string;
    readonly count: number;
    readonly example: string;
    readonly currents?: 'too';
  },
  log: EntryLog,
): readonly Step[] | undefined {
  const parts = typed.split(';').flatMap((part) => (part.trim() === '' ? [] : [part.trim()]));
  const steps = parts.map((part) => readStep(part, count, log.units, currents === 'too'));
  const wrong = steps.find((step) => typeof step === 'string');
  if (wrong === undefined) return steps.flatMap((step) => (typeof step === 'string' ? [] : [step]));
  log.faults.push({ field, said: `${wrong} Write it like ${example}.` });
  return undefined;
}

function readStep(part: string, count: number, units: EntryLog['units'], hasCurrents: boolean): Step | string {
  const at = part.lastIndexOf(':');
  if (at < 0) return `"${part.slice(0, 40)}" has no colon between the length and the figures.`;
  const figures = part
    .slice(at + 1)
    .split('/')
    .map((figure) => (figure.trim() === '' ? Number.NaN : Number(figure)));
  if (figures.length !== count || figures.some((figure) => !Number.isFinite(figure) || figure < 0))
    return `"${part.slice(0, 40)}" needs ${count === 1 ? 'one figure' : `${count} figures`} that are not below 0.`;
  const upTo = part.slice(0, at).trim();
  const [, current, rest = upTo] = (hasCurrents ? /^(\d+(?:\.\d+)?)\s*A\b\s*,?\s*(.*)$/i.exec(upTo) : null) ?? [];
  const amperes = current === undefined ? {} : { amperes: Number(current) };
  if (current !== undefined && rest === '') return { ...amperes, figures };
  const length = parseLength(rest, units, DISTANCE);
  return length.ok ? { ...amperes, mm: toMm(length.length), figures } : `${length.problem} ${length.remedy}`;
}
