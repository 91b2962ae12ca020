import { ACTIVITIES } from '../../src/domain/labour/result.ts';
import { activityWord } from './activities.ts';
import { factorWord } from './factors.ts';

const WORDS: Readonly<Record<string, string>> = {
  bookVersion: 'Version of the book',
  policy: 'Factors of one line',
  'factors.height': 'Mounting height: over, + %',
  'factors.congestion.open': 'Open ceiling, + %',
  'factors.congestion.normal': 'Normal ceiling, + %',
  'factors.congestion.tight': 'Tight ceiling, + %',
  'factors.storeyPercentEach': 'Each storey above grade, + %',
  'factors.livePercent': 'Beside equipment in service, + %',
  'learning.rate': 'Learning rate',
  'learning.referenceRepeat': 'Repeat that the base hours stand for',
  'learning.over': 'What repeats',
  nonProductivePercent: 'Briefings, waiting, cleaning, + %',
  'nonProductiveDay.lostHours': 'Or hours of the day that nobody works',
  'nonProductiveDay.dayHours': 'Of hours in a working day',
  'overtime.hoursPerWeek': 'Hours worked in a week',
  'overtime.straightHours': 'Of these at the straight rate',
  'overtime.premium': 'An hour beyond them is paid, times the rate',
  'overtime.productivity': 'Part of an hour’s work done in such a week',
  correlation: 'Correlation between activities, 0 to 1',
  trials: 'Trials of the range',
  seed: 'Seed of the trials',
};

const CELLS: Readonly<Record<string, string>> = {
  unit: 'unit',
  low: 'low',
  likely: 'likely',
  high: 'high',
  bands: 'by rating and length',
  role: 'role',
  number: 'number',
  ratePerHour: 'rate per hour',
  effectiveness: 'effectiveness',
  burdenPercent: 'burden, %',
};

const CONDITION_CELLS: Readonly<Record<string, string>> = { name: 'what it is', percent: 'added, %' };

/** What the form of a labour book calls an entry, by its path. */
export function labourBookEntryWord(path: string): string {
  const [group, name = '', cell = '', factor = ''] = path.split('.');
  const activity = ACTIVITIES.find((id) => id === name);
  if (group === 'activities' && activity !== undefined)
    return `${activityWord(activity)}: ${factor === '' ? (CELLS[cell] ?? cell) : factorWord(factor)}`;
  if (path.startsWith('learning.activities.')) return `learned: ${activityWordOf(cell)}`;
  const condition = /^jobConditions\[(\d+)\]$/.exec(group ?? '')?.[1];
  if (condition !== undefined && name === 'activities')
    return `condition of the job, row ${Number(condition) + 1}: felt by ${activityWordOf(cell)}`;
  if (condition !== undefined)
    return `condition of the job, row ${Number(condition) + 1}: ${CONDITION_CELLS[name] ?? name}`;
  const row = /^crew\[(\d+)\]$/.exec(group ?? '')?.[1];
  if (row !== undefined) return `crew, row ${Number(row) + 1}: ${CELLS[name] ?? name}`;
  return WORDS[path] ?? path;
}

function activityWordOf(id: string): string {
  const activity = ACTIVITIES.find((known) => known === id);
  return activity === undefined ? id : activityWord(activity);
}
