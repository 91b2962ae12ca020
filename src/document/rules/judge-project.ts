import type { Fault } from '../fault.ts';
import type { Salvaged } from '../parsing/salvaged.ts';
import { sayNumber, sayValue } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import { isCurrency } from './currencies.ts';
import { faultAt } from './fault-at.ts';

type Project = NonNullable<Salvaged<JobDocument>['project']>;

/** Line-to-neutral more than 1 % off line-to-line/√3 is not a balanced source, which every electrical figure assumes. */
const VOLTAGE_TOLERANCE = 0.01;

export function judgeProject({ project }: Salvaged<JobDocument>): Fault[] {
  return project ? [...judgeVoltage(project), ...judgeCurrency(project), ...judgeTimeZone(project)] : [];
}

function judgeVoltage({ voltageLL, voltageLN }: Project): Fault[] {
  if (voltageLL === undefined || voltageLN === undefined) return [];
  const balanced = voltageLL / Math.sqrt(3);
  if (Math.abs(voltageLN - balanced) <= VOLTAGE_TOLERANCE * balanced) return [];
  const message =
    `voltageLN is ${sayNumber(voltageLN)} V, but ${sayNumber(voltageLL)} V line to line has ` +
    `${sayNumber(Number(balanced.toFixed(1)))} V line to neutral; they may differ by 1 %.`;
  return [
    faultAt(
      ['project', 'voltageLN'],
      message,
      'Correct one of the two: 208 goes with 120, 400 with 230, 480 with 277.',
    ),
  ];
}

function judgeCurrency({ currency }: Project): Fault[] {
  if (currency === undefined || isCurrency(currency)) return [];
  const message = `${sayValue(currency)} is not a currency of ISO 4217.`;
  return [faultAt(['project', 'currency'], message, 'Write its three letters, such as USD, CAD, EUR or GBP.')];
}

function judgeTimeZone({ timeZone }: Project): Fault[] {
  if (timeZone === undefined || isTimeZone(timeZone)) return [];
  const message = `${sayValue(timeZone)} is not a time zone that is known.`;
  return [faultAt(['project', 'timeZone'], message, 'Write its IANA name, such as America/Chicago or Europe/Paris.')];
}

function isTimeZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).format(0) !== '';
  } catch {
    return false;
  }
}
