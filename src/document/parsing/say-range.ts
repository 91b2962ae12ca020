import type { Fault } from '../fault.ts';
import { FINEST_MM } from '../schema/fields.ts';
import { sayNumber } from './say.ts';

interface Limit {
  readonly code: 'too_small' | 'too_big';
  readonly minimum?: number | bigint;
  readonly maximum?: number | bigint;
  readonly inclusive?: boolean;
}

interface Figure {
  readonly key: string;
  readonly value: number;
  readonly description: string;
}

type Saying = Pick<Fault, 'message' | 'remedy'>;

const FOOT_MM = 304.8;
const MILE_MM = 1_609_344;

/** Says that a figure is outside its range, and which other reading of it was probably meant. */
export function sayRange(limit: Limit, figure: Figure): Saying {
  const { key, value } = figure;
  return {
    message: `${key} is ${sayNumber(value)}; it must be ${sayLimit(limit, key)}.`,
    remedy: remedyFor(limit, figure),
  };
}

function sayLimit(limit: Limit, key: string): string {
  if (limit.code === 'too_big') {
    const most = sayNumber(Number(limit.maximum));
    return limit.inclusive ? `at most ${most}` : `less than ${most}`;
  }
  const least = Number(limit.minimum);
  const isSize = key.endsWith('Mm') && least === FINEST_MM;
  if (isSize) return 'more than 0';
  return limit.inclusive ? `at least ${sayNumber(least)}` : `more than ${sayNumber(least)}`;
}

function remedyFor(limit: Limit, figure: Figure): string {
  const { key, value, description } = figure;
  if (limit.code === 'too_small') return smallRemedy(figure);
  if (isFraction(limit) && value <= 100) return `Did you mean ${sayNumber(value / 100)}? ${describeFraction(key)}`;
  if (key.endsWith('Mm')) return longRemedy(value);
  return `Give ${description}.`;
}

function smallRemedy({ key, value, description }: Figure): string {
  if (key.endsWith('Mm') && value < 0) {
    return `A distance is not negative: did you mean ${sayNumber(-value)}? Give ${description}.`;
  }
  return `Give ${description}.`;
}

/** Power factor, harmonic content, learning rate, correlation: typed as per cent by habit. */
function isFraction(limit: Limit): boolean {
  return Number(limit.maximum) === 1;
}

function describeFraction(key: string): string {
  return `${key} is a number from 0 to 1, not per cent.`;
}

/** Feet that were multiplied into millimetres twice are the usual cause; the single conversion is offered. */
function longRemedy(mm: number): string {
  const km = `That is ${sayNumber(round(mm / 1e6, 1))} km (${sayNumber(round(mm / MILE_MM, 1))} miles).`;
  const once = mm / FOOT_MM;
  return (
    `${km} Lengths here are millimetres. If the figure was converted from feet twice, it is ` +
    `${sayNumber(round(once, 1))} mm = ${sayNumber(round(once / FOOT_MM, 1))} ft.`
  );
}

function round(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
