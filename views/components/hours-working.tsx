import type { JSX } from 'preact';
import { FACTOR_NAMES } from '../../src/document/labour-book-form/entries.ts';
import type { LabourLine } from '../../src/domain/labour/result.ts';
import { activityWord } from '../words/activities.ts';
import { factorWord } from '../words/factors.ts';
import { Working, type WorkingInput } from './working.tsx';

export interface HoursWorkingProps {
  readonly line: LabourLine;
  /** `add` or `compound`: how the company lets factors meet. */
  readonly policy: 'add' | 'compound';
  /** Of the labour book. */
  readonly book: string;
}

/** The hours of one line of the reckoning, which open to every factor that made them. */
export function HoursWorking({ line, policy, book }: HoursWorkingProps): JSX.Element {
  const of = `hours of ${activityWord(line.activity)}${line.run === null ? '' : ` on ${line.run}`}`;
  if (line.activity === 'extra')
    return (
      <Working
        figure={line.hours.toFixed(2)}
        of={of}
        formula="hours = quantity × hours each × non-productive"
        filledIn={`${line.hours.toFixed(2)} = ${figure(line.quantity)} × ${figure(line.base.likely)} × ${figure(line.nonProductiveFactor)}`}
        inputs={[{ name: 'note', value: line.note ?? '', source: 'added by hand' }]}
        source="Added by the estimator by hand; no labour book stands behind it."
      />
    );
  return (
    <Working
      figure={line.hours.toFixed(2)}
      of={of}
      formula="hours = quantity × base hours × condition factor × learning × non-productive"
      filledIn={`${line.hours.toFixed(2)} = ${[line.quantity, line.base.likely, line.conditionFactor, line.learningFactor, line.nonProductiveFactor].map(figure).join(' × ')}`}
      inputs={inputsOf(line, policy, book)}
      source={`Labour book ${book}. Factors ${policy === 'add' ? 'are added to each other' : 'compound'}: the company’s policy.`}
    />
  );
}

function inputsOf(line: LabourLine, policy: 'add' | 'compound', book: string): WorkingInput[] {
  const { low, likely, high } = line.base;
  return [
    {
      name: 'quantity',
      value: `${figure(line.quantity)} ${perUnit(line.unit)}`,
      source: 'layout and takeoff of the run',
    },
    {
      name: 'base hours',
      value: `${figure(likely)} h likely, ${figure(low)} to ${figure(high)} h`,
      source: `labour book ${book}`,
    },
    ...line.factors.map((factor) => ({
      name: factorWord(factor.name),
      value: `${factor.percent > 0 ? '+' : ''}${figure(factor.percent)} %`,
      source: FACTOR_NAMES.some((name) => name === factor.name)
        ? 'conditions of the level'
        : `conditions of the job, labour book ${book}`,
    })),
    {
      name: 'condition factor',
      value: figure(line.conditionFactor),
      source: policy === 'add' ? 'added' : 'compounded',
    },
    {
      name: 'learning',
      value: figure(line.learningFactor),
      source: line.repeat === null ? 'none on this activity' : `repeat ${line.repeat} of the unit curve`,
    },
    { name: 'non-productive', value: figure(line.nonProductiveFactor), source: `labour book ${book}` },
  ];
}

function perUnit(unit: string): string {
  return unit === 'each' ? '' : `× ${unit}`;
}

/** To four decimals, without noughts at the end. */
function figure(value: number): string {
  return String(Number(value.toFixed(4)));
}
