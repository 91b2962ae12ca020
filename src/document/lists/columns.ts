import type { LengthUnit } from '../../domain/units/read-length.ts';

/** The columns of a list: each with the names it also goes by, and whether a list must have it. */
export interface Columns<Name extends string> {
  readonly names: Readonly<Record<Name, readonly string[]>>;
  readonly required: readonly Name[];
}

export const RUN_COLUMNS = {
  names: {
    run: ['run id', 'run label'],
    level: ['floor'],
    area: ['room'],
    type: ['busway type'],
    side: ['feed side'],
    'paired run': ['pair run'],
    'conductor side': ['conductors'],
    feed: [],
    x: ['start x'],
    y: ['start y'],
    z: ['start z'],
    heading: ['heading deg'],
    'leg lengths': ['legs', 'leg length', 'lengths'],
    turns: ['turn'],
    rod: ['rod size'],
    drop: ['rod length'],
  },
  required: ['run', 'level', 'type', 'conductor side', 'leg lengths'],
} as const satisfies Columns<string>;

export const TAP_COLUMNS = {
  names: {
    run: ['run id', 'run label'],
    tap: ['tap id', 'tap label', 'tap-off'],
    at: ['distance'],
    phases: ['phase'],
    neutral: [],
    device: ['device a', 'device rating'],
    'load VA': ['va'],
    'load A': ['load amps'],
    pf: ['power factor'],
    serves: ['equipment'],
    pair: ['pair label'],
    fixed: ['may not move'],
    'interrupting kA': ['ka', 'kaic', 'interrupting rating'],
    continuous: ['three hours or more'],
    'third harmonic': ['3rd harmonic'],
    'phase may change': ['movable phase'],
    drop: ['drop length', 'cord length'],
    weight: ['box weight'],
  },
  required: ['run', 'tap', 'at', 'phases', 'device'],
} as const satisfies Columns<string>;

export type RunColumn = keyof (typeof RUN_COLUMNS)['names'];
export type TapColumn = keyof (typeof TAP_COLUMNS)['names'];

/** A heading without case, marks and unit: `Leg_Lengths (mm)` is `leglengths`. */
export function plainHeading(heading: string): string {
  return heading
    .replace(UNIT, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
}

const UNIT = /[([]\s*(mm|cm|m|ft|feet|in|va|a|deg|°)\s*[)\]]\s*$/i;
const LENGTH_UNITS: Readonly<Record<string, LengthUnit>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  ft: 'ft',
  feet: 'ft',
  in: 'in',
};

/** The unit that a heading gives its bare numbers: `x (mm)` gives mm. */
export function headingUnit(heading: string): LengthUnit | null {
  const word = UNIT.exec(heading)?.[1]?.toLowerCase() ?? '';
  return LENGTH_UNITS[word] ?? null;
}
