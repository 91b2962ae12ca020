import { figure } from '../../../src/domain/quality/insulation/print.ts';
import type { Question } from '../../../src/domain/quality/insulation/questions.ts';
import { degrees, long, megohm } from './figures.ts';
import type { Speech, Told } from './told.ts';

/** What a doubtful figure of a test sheet is asked with. */
export function questionTold(question: Question, say: Speech): Told {
  switch (question.code) {
    case 'temperature-high':
      return {
        what: `Is the housing really at ${figure(question.args.tempC)} °C?`,
        number: `${figure(question.args.tempC)} °F would be ${degrees(question.args.fahrenheitAsC)}`,
        remedy: 'Correct it if °F was read, or say that it stands.',
      };
    case 'length-differs':
      return {
        what: 'The length on the sheet is not that of the record, which is the one that counts.',
        number: lengthNumbers(question.args, say),
        remedy:
          'Correct the sheet and say that the record stands; if the record is wrong, the office changes the run first.',
      };
    case 'unit-mix':
      return {
        what: `Most readings are in ${question.args.usual}, and some are not.`,
        number: question.args.odd
          .map((odd) => `${odd.pair}: ${odd.written} ${odd.unit} = ${megohm(odd.megohm)}`)
          .join('; '),
        remedy: 'Correct the unit, or say that it stands.',
      };
    case 'over-range-code':
      return {
        what: "A row of nines is often a meter's sign for more than it can show.",
        number: question.args.readings.map(({ pair, written, unit }) => `${pair}: ${written} ${unit}`).join('; '),
        remedy: "If so, write it as more than the meter's top range, such as > 5000; or say that the figure stands.",
      };
  }
}

type LengthArgs = Extract<Question, { readonly code: 'length-differs' }>['args'];

function lengthNumbers({ typed, recorded, byTypedMegohm, byRecordedMegohm }: LengthArgs, say: Speech): string {
  const lengths = `sheet ${long(typed, say)}, record ${long(recorded, say)}`;
  if (byTypedMegohm === null || byRecordedMegohm === null) return lengths;
  return `${lengths}; the lowest reading for 1,000 ft, before temperature, would be ${megohm(byTypedMegohm)} instead of ${megohm(byRecordedMegohm)}`;
}
