import { kgFromLb, nmFromLbfFt, nmFromLbfIn } from './quantities.ts';

export type ParsedQuantity =
  | { readonly ok: true; readonly value: number; readonly note?: string }
  | { readonly ok: false; readonly problem: string; readonly remedy: string };

/** Factor of each unit that a text may carry; the empty word is the unit of a bare number. */
type Units = Readonly<Record<string, number>>;

interface Kind {
  readonly units: Units;
  readonly example: string;
}

const WEIGHT: Kind = { units: { '': 1, kg: 1, lb: kgFromLb(1), lbs: kgFromLb(1) }, example: '64 kg or 142 lb' };
const TORQUE: Kind = {
  units: {
    '': 1,
    nm: 1,
    lbfft: nmFromLbfFt(1),
    lbft: nmFromLbfFt(1),
    ftlb: nmFromLbfFt(1),
    ftlbf: nmFromLbfFt(1),
    lbfin: nmFromLbfIn(1),
    lbin: nmFromLbfIn(1),
    inlb: nmFromLbfIn(1),
  },
  example: '27 N·m or 20 lbf·ft',
};
/** Megohms: the case of the prefix tells milli from mega, so it is kept. */
const RESISTANCE: Kind = {
  units: { '': 1, MΩ: 1, Mohm: 1, GΩ: 1_000, Gohm: 1_000, TΩ: 1_000_000, kΩ: 0.001, kohm: 0.001 },
  example: '950 MΩ or 0.95 GΩ',
};

/** A weight in kg; a bare number is kg. `parseWeight('20 lb')` gives 9.0718474. */
export function parseWeight(text: string): ParsedQuantity {
  return parseQuantity(text, WEIGHT, (unit) => unit.toLowerCase());
}

/** A torque in N·m; a bare number is N·m. `parseTorque('20 lbf·ft')` gives 27.116... */
export function parseTorque(text: string): ParsedQuantity {
  return parseQuantity(text, TORQUE, (unit) => unit.toLowerCase().replace(/[\s·.*-]/g, ''));
}

/** An insulation resistance in MΩ; another prefix is converted and said. `parseMegohms('0.95 GΩ')` gives 950. */
export function parseMegohms(text: string): ParsedQuantity {
  const read = parseQuantity(text, RESISTANCE, (unit) => unit.replace('\u2126', 'Ω').replace(/ohms?$/i, 'ohm'));
  const isOther = read.ok && /[kGT]\s*(Ω|\u2126|ohms?)\s*$/i.test(text) && !/M\s*(Ω|\u2126|ohms?)\s*$/.test(text);
  return isOther ? { ...read, note: `${text.trim()} = ${showNumber(read.value)} MΩ.` } : read;
}

/** Hours as a decimal or as hours and minutes. `parseHours('1:30')` and `parseHours('1 h 30')` give 1.5. */
export function parseHours(text: string): ParsedQuantity {
  const clock = /^(\d+)\s*(?::|h)\s*([0-5]\d)\s*(?:m|min)?$/.exec(text.trim().toLowerCase());
  if (clock) return { ok: true, value: Number(clock[1]) + Number(clock[2]) / 60 };
  const hours: Kind = { units: { '': 1, h: 1, hr: 1, hrs: 1, hours: 1, min: 1 / 60 }, example: '7.5 or 7:30' };
  return parseQuantity(text, hours, (unit) => unit.toLowerCase());
}

function parseQuantity(text: string, kind: Kind, plainUnit: (unit: string) => string): ParsedQuantity {
  const remedy = `Write it like ${kind.example}.`;
  const [, digits, typed = ''] = /^(\d+(?:[.,]\d+)*|\.\d+)\s*(.*)$/.exec(text.trim().normalize('NFC')) ?? [];
  if (text.trim() === '') return { ok: false, problem: 'No figure was given.', remedy };
  const value = digits === undefined ? undefined : readNumber(digits);
  const positive = /^[-\u2212]\s*(.+)$/.exec(text.trim())?.[1];
  if (positive !== undefined && parseQuantity(positive, kind, plainUnit).ok) {
    return {
      ok: false,
      problem: `${text.trim()} is negative; a figure here is not.`,
      remedy: `Did you mean ${positive}?`,
    };
  }
  if (value === undefined) return { ok: false, problem: 'This is not a figure that can be read here.', remedy };
  const unit = plainUnit(typed.trim());
  const factor = Object.hasOwn(kind.units, unit) ? kind.units[unit] : undefined;
  if (factor === undefined)
    return { ok: false, problem: `"${typed.slice(0, 20)}" is not a unit that fits here.`, remedy };
  // Ten pounds are 4.5359237 kg, not 4.535923700000001: what is written down is written as short as it is.
  return { ok: true, value: Number((value * factor).toPrecision(15)) };
}

function readNumber(digits: string): number | undefined {
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(digits)) return Number(digits.replaceAll(',', ''));
  if (/^\d+,\d+$/.test(digits)) return Number(digits.replace(',', '.'));
  return /^\d*\.?\d+$/.test(digits) ? Number(digits) : undefined;
}

function showNumber(value: number): string {
  return new Intl.NumberFormat('en-US', { maximumFractionDigits: 6 }).format(value);
}
