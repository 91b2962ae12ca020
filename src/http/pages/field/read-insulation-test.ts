import type { Reads } from '../../../../views/pages/field/insulation/pair-entry.tsx';
import { whole } from '../../../../views/pages/field/told-text.ts';
import { readingWords } from '../../../../views/words/quality.ts';
import type { RunChecks } from '../../../actions/cards.ts';
import type { RecordInput } from '../../../document/record-schema.ts';
import { INSULATION_RULES } from '../../../domain/quality/insulation/criterion.ts';
import { pairsOf } from '../../../domain/quality/insulation/pairs.ts';
import { QUESTION_CODES } from '../../../domain/quality/insulation/questions.ts';
import {
  parseReading,
  RESISTANCE_UNITS,
  type Reading,
  type ResistanceUnit,
} from '../../../domain/quality/insulation/reading.ts';
import { DISTANCE } from '../../../domain/units/parse-length.ts';
import { type FieldEntries, MOST_NOTE } from './entries.ts';

type TestInput = Extract<RecordInput['body'], { readonly kind: 'insulation-test' }>;
type TopRange = { readonly value: number; readonly unit: ResistanceUnit } | null;

/** The sheet of an insulation test as typed, and the failed test whose place it takes. */
export function readInsulationTest(
  entries: FieldEntries,
  view: RunChecks,
): { readonly body: TestInput; readonly supersedes: { readonly id: string; readonly cause: string } | null } {
  const { units, timeZone } = view.at.floor.project.document;
  const say = { units, zone: timeZone ?? null };
  const topRange = topRangeOf(entries);
  const readings = pairsOf(view.at.insulation.conductors).map((pair) => ({
    pair,
    reading: readingOf(entries, pair, topRange, (fault) => whole(readingWords(fault, say))),
  }));
  const rule = INSULATION_RULES.find((one) => one === entries.text('rule'));
  if (rule === undefined) entries.fault('rule', 'Choose the rule that judges all tests of this job.');
  const other = entries.optional('otherIsolation');
  const body: TestInput = {
    kind: 'insulation-test',
    rule: rule ?? 'acceptance-1000ft',
    testVoltageV:
      wholeFigure(entries, 'testVoltage', 50, 10_000, 'Write the test voltage in V DC, such as 1000.') ?? 1000,
    durationS:
      entries.text('duration') === ''
        ? null
        : wholeFigure(entries, 'duration', 1, 3600, 'Write the seconds, such as 60.'),
    instrument: {
      id: entries.needed('instrument', 'Write the number of the test set.'),
      calibrationDue:
        entries.text('calibrationDue') === ''
          ? null
          : entries.day('calibrationDue', 'Write the last day of its calibration, from its label.'),
      topRange,
    },
    surfaceTempC: temperature(entries, 'surfaceTemp'),
    ambientTempC: temperature(entries, 'ambientTemp'),
    humidityPercent: humidity(entries),
    lengthTypedMm: entries.lengthMm('lengthTyped', units, DISTANCE),
    isolations: [...entries.all('isolations').slice(0, 39), ...(other === null ? [] : [other])],
    readings,
    confirmed: QUESTION_CODES.filter((code) => entries.all('confirmed').includes(code)),
    witness: entries.optional('witness'),
    note: entries.optional('note', MOST_NOTE),
  };
  return { body, supersedes: replacedBy(entries) };
}

function replacedBy(entries: FieldEntries) {
  if (!entries.ticked('replaces')) return null;
  const cause = entries.needed('cause', 'Say what was found and put right: the failed test stays in the book.');
  if (cause !== '' && cause.length < 3) entries.fault('cause', 'Say it in a few words: three signs at least.');
  return { id: entries.text('failed'), cause };
}

function readingOf(
  entries: FieldEntries,
  pair: string,
  topRange: TopRange,
  words: (fault: Extract<ReturnType<typeof parseReading>, { ok: false }>['fault']) => string,
): Reading {
  const kind = entries.text(`kind ${pair}`) as Reads | '';
  if (kind === 'not-measured') return { kind, reason: entries.optional('whyNot') };
  if (kind === 'meter-fault') return { kind, note: entries.optional('whyNot') };
  const unit = RESISTANCE_UNITS.find((one) => one === entries.text(`unit ${pair}`)) ?? 'MΩ';
  const read = parseReading(entries.text(`value ${pair}`), unit, topRange);
  if (!read.ok) {
    entries.fault(`value ${pair}`, words(read.fault));
    return { kind: 'blank' };
  }
  const { reading } = read;
  if (reading.kind !== 'value') return reading;
  if (reading.value > 1e9) entries.fault(`value ${pair}`, 'That is more than any meter shows: look at the unit.');
  return kind === 'more' ? { ...reading, comparator: '>' } : reading;
}

function topRangeOf(entries: FieldEntries): TopRange {
  const typed = entries.text('topRange');
  const read = parseReading(typed, 'MΩ', null);
  if (read.ok && read.reading.kind === 'value') return { value: read.reading.value, unit: read.reading.unit };
  if (typed !== '') entries.fault('topRange', 'Write a figure with its unit, such as 5 GΩ.');
  return null;
}

function wholeFigure(entries: FieldEntries, name: string, least: number, most: number, remedy: string): number | null {
  const value = entries.figure(name, remedy);
  if (value === null) return null;
  if (!Number.isInteger(value) || value < least || value > most)
    entries.fault(name, `${value} is outside ${least} to ${most}. ${remedy}`);
  return value;
}

function temperature(entries: FieldEntries, name: string): number | null {
  if (entries.text(name) === '') return null;
  const value = entries.figure(name, 'Write the temperature in °C, such as 24.5.');
  if (value !== null && (value < -90 || value > 200))
    entries.fault(name, `${value} °C is no temperature of a building.`);
  return value;
}

function humidity(entries: FieldEntries): number | null {
  if (entries.text('humidity') === '') return null;
  const value = entries.figure('humidity', 'Write the relative humidity in %, such as 55.');
  if (value !== null && (value < 0 || value > 100))
    entries.fault('humidity', `${value} % is none: above 0, up to 100.`);
  return value;
}
