import type { UnitSystem } from '../model.ts';
import { formatLength, NEARLY } from './format-length.ts';
import { FOOT, INCH, type Length, METRE, UNITS_PER_MM } from './length.ts';

export type LengthUnit = 'ft' | 'in' | 'mm' | 'cm' | 'm';

export const UNIT_LENGTHS: Readonly<Record<LengthUnit, Length>> = {
  ft: FOOT,
  in: INCH,
  mm: UNITS_PER_MM,
  cm: 10 * UNITS_PER_MM,
  m: METRE,
};

/** One figure with one unit, kept so that other readings of it can be offered. */
export interface Figure {
  readonly value: number;
  readonly unit: LengthUnit;
  readonly digits: string;
}

/** What a text says, in 1/80 mm and not yet rounded. */
export interface Reading {
  readonly length: number;
  readonly figure?: Figure;
}

export interface Refusal {
  readonly problem: string;
  readonly remedy: string;
  /** What was probably meant, ready to be put into the field. */
  readonly suggestion?: string;
}

/** Reads a length that `plainLengthText` has brought to one spelling; a bare number takes the project's unit. */
export function readLength(plain: string, units: UnitSystem): Reading | Refusal {
  const isNegative = plain.startsWith('-');
  const body = plain.replace(/^[+-]\s*/, '');
  const read = readFeetAndInches(body) ?? readInches(body) ?? readFigure(body, units) ?? readUnmarked(body);
  if (!read) return refuse(plain, units);
  if ('problem' in read || !isNegative) return read;
  return { length: -read.length, ...(read.figure && { figure: { ...read.figure, value: -read.figure.value } }) };
}

const EXAMPLES: Readonly<Record<UnitSystem, string>> = {
  'ft-in': `12'-6 1/2", 12.5 ft or 3810 mm`,
  metric: `3810, 3.81 m or 12'-6"`,
};

function refuse(plain: string, units: UnitSystem): Refusal {
  const remedy = `Write it like ${EXAMPLES[units]}.`;
  if (plain === '') return { problem: 'No length was given.', remedy };
  if (plain.startsWith(NEARLY)) return { problem: `${NEARLY} marks a figure that was rounded.`, remedy };
  return { problem: 'This cannot be read as a length.', remedy };
}

const FEET_AND_INCHES = /^(\d+)\s*ft\s*-?\s*(\d+(?:\.\d+)?(?:\s+\d+\/\d+)?|\d+\/\d+)\s*(?:in)?$/;

function readFeetAndInches(body: string): Reading | Refusal | undefined {
  const [, feet, inchText] = FEET_AND_INCHES.exec(body) ?? [];
  if (feet === undefined || inchText === undefined) return undefined;
  const inches = readMixed(inchText);
  if (inches === undefined) return BAD_FRACTION;
  const length = Number(feet) * FOOT + inches;
  if (inches < FOOT) return { length };
  const suggestion = formatLength(Math.round(length), 'ft-in');
  return {
    problem: `${inchText} in after ${feet} ft is a foot or more.`,
    remedy: `Did you mean ${suggestion}?`,
    suggestion,
  };
}

const INCHES = /^(\d+(?:\.\d+)?(?:\s+\d+\/\d+)?|\d+\/\d+)\s*in$/;

function readInches(body: string): Reading | Refusal | undefined {
  const digits = INCHES.exec(body)?.[1];
  if (digits === undefined) return undefined;
  const length = readMixed(digits);
  if (length === undefined) return BAD_FRACTION;
  return digits.includes('/') ? { length } : { length, figure: { value: Number(digits), unit: 'in', digits } };
}

const BAD_FRACTION: Refusal = {
  problem: 'The fraction of an inch is not a proper one.',
  remedy: 'Write it like 6 1/2, in halves, quarters, eighths or sixteenths.',
};

/** `6`, `6.5`, `1/2` or `6 1/2` inches; undefined where the fraction is not less than an inch. */
function readMixed(text: string): number | undefined {
  if (!text.includes('/')) return Number(text) * INCH;
  const parts = text.split(/\s+/);
  const [over = 0, under = 0] = (parts.at(-1) ?? '').split('/').map(Number);
  const whole = parts.length === 2 ? Number(parts[0]) : 0;
  const isProper = over < under && Number.isInteger(whole);
  return isProper ? whole * INCH + (over * INCH) / under : undefined;
}

const FIGURE = /^(\d+(?:\.\d*)?|\.\d+)\s*(ft|mm|cm|m)?\.?$/;

function readFigure(body: string, units: UnitSystem): Reading | undefined {
  const [, digits, typed] = FIGURE.exec(body) ?? [];
  if (digits === undefined) return undefined;
  const unit = isUnit(typed) ? typed : units === 'ft-in' ? 'ft' : 'mm';
  const value = Number(digits);
  return { length: value * UNIT_LENGTHS[unit], figure: { value, unit, digits } };
}

function isUnit(word: string | undefined): word is LengthUnit {
  return word !== undefined && Object.hasOwn(UNIT_LENGTHS, word);
}

const UNMARKED = /^(\d+)(?:-| ?- ?| )(\d+(?:\s+\d+\/\d+)?)$/;

/** `12-6` or `12 6` is feet and inches to some and nothing to others: the reading is offered, not taken. */
function readUnmarked(body: string): Refusal | undefined {
  const [, feet, inches] = UNMARKED.exec(body) ?? [];
  if (feet === undefined || inches === undefined) return undefined;
  const suggestion = `${feet}'-${inches}"`;
  return { problem: `"${body}" has no marks for its units.`, remedy: `Did you mean ${suggestion}?`, suggestion };
}
