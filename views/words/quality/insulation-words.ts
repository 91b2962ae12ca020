import type { InsulationRule } from '../../../src/domain/quality/insulation/criterion.ts';
import { figure } from '../../../src/domain/quality/insulation/print.ts';
import type { Question } from '../../../src/domain/quality/insulation/questions.ts';
import type { ReadingFault } from '../../../src/domain/quality/insulation/reading.ts';
import type { InsulationRefusal } from '../../../src/domain/quality/refusal.ts';
import { degrees, listed, megohm } from './figures.ts';
import { questionTold } from './question-told.ts';
import type { WordsFor } from './told.ts';

const RULES: Readonly<Record<string, string>> = {
  'acceptance-1000ft': 'acceptance rule for 1,000 ft',
  'busway-guide': "busway guide's rule",
  'iec-60364-6': 'IEC 60364-6',
} satisfies Readonly<Record<InsulationRule, string>>;

export function ruleWord(rule: string): string {
  return RULES[rule] ?? rule;
}

export const INSULATION_WORDS: WordsFor<InsulationRefusal> = {
  'insulation.rule-locked': ({ locked, asked }) => ({
    what: `All tests of this job are judged by the ${ruleWord(locked)}; this one names the ${ruleWord(asked)}.`,
    number: null,
    remedy: 'Judge it by the locked rule: limits are not changed after the first reading.',
  }),
  'insulation.rating-outside': ({ ratedV, greatestV, source }) => ({
    what: 'The table that judges insulation has no row for this busway.',
    number: `rated ${ratedV} V, the table goes to ${greatestV} V (${source})`,
    remedy: 'Look at the rated voltage of the busway type; if it is right, an engineer states the limit.',
  }),
  'insulation.test-voltage': ({ neededV, usedV, source }) => ({
    what: 'The test voltage is not the one of the table.',
    number: `${usedV} V DC used, ${neededV} V DC asked (${source})`,
    remedy: `Test at ${neededV} V DC, if the maker's sheet allows it for this busway, and record that test.`,
  }),
  'insulation.temperature-outside': ({ tempC, fahrenheitAsC, leastC, greatestC }) => ({
    what: 'The surface temperature is outside the table of correction factors.',
    number: `${degrees(tempC)}; the table covers ${leastC} to ${greatestC} °C. ${figure(tempC)} °F would be ${degrees(fahrenheitAsC)}`,
    remedy: 'Enter the temperature of the housing in °C, or test at a temperature that the table covers.',
  }),
  'insulation.limit-looser': ({ projectMegohm, ruleMegohm, source }) => ({
    what: "The project's own limit is easier than the rule's.",
    number: `${megohm(projectMegohm)} (${source}) against ${megohm(ruleMegohm)}`,
    remedy: 'A project may ask for more, never for less: take the own limit out, or raise it.',
  }),
  'insulation.unknown-pair': ({ pair, pairs }) => ({
    what: `This busway has no pair ${pair}.`,
    number: `its pairs: ${listed(pairs)}`,
    remedy: 'Correct the pair. A pair is never made up for a conductor that is not there.',
  }),
  'insulation.pair-twice': ({ pair }) => ({
    what: `The pair ${pair} stands twice on the sheet.`,
    number: null,
    remedy: 'Keep one reading for each pair; a second measurement is another test.',
  }),
  'insulation.no-length': () => ({
    what: 'The run has no length in the record, so no limit can be worked out.',
    number: null,
    remedy: 'The office lays the run out and releases it first.',
  }),
  'insulation.humidity-outside': ({ percent }) => ({
    what: 'That is no relative humidity.',
    number: `${figure(percent)} %`,
    remedy: 'Enter a figure above 0 and up to 100 %, or leave it out.',
  }),
  'insulation.question-open': ({ questions }, say) => questionsTold(questions, say),
};

function questionsTold(questions: readonly Question[], say: Parameters<typeof questionTold>[1]) {
  const told = questions.map((question) => questionTold(question, say));
  return {
    what: told.map(({ what }) => what).join(' '),
    number:
      told
        .map(({ number }) => number)
        .filter((number) => number !== null)
        .join('; ') || null,
    remedy: told.map(({ remedy }) => remedy).join(' '),
  };
}

export const READING_WORDS: WordsFor<ReadingFault> = {
  'reading.over-range': ({ written }) => ({
    what: `“${written}” says that the meter's range was passed.`,
    number: null,
    remedy: "Enter the meter's top range for this test; the reading is then kept as more than that.",
  }),
  'reading.not-a-number': ({ written }) => ({
    what: `“${written}” is no reading.`,
    number: null,
    remedy: 'Write a figure such as 1250, > 5000 or 0.95 GΩ, or “not measured”, or leave the box blank.',
  }),
};
