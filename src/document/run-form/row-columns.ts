import type { RowGroup } from './entries.ts';

/** A column of the rows of a form, as a spreadsheet may name it and its cells. */
export interface RowColumn {
  /** Path within the row. */
  readonly path: string;
  /** How it is called where something is wrong. */
  readonly name: string;
  /** Other headings for it, plain: small letters and digits alone. */
  readonly headings: readonly string[];
  readonly reading: 'length' | 'number' | 'text' | readonly RowChoice[];
}

export interface RowChoice {
  readonly value: string;
  /** Words for it, plain; the first is offered. An empty word stands for an empty cell. */
  readonly words: readonly string[];
}

const SIDES: readonly RowChoice[] = [
  { value: '', words: ['either', '', 'eitherside', 'any', 'none'] },
  { value: 'left', words: ['left', 'l'] },
  { value: 'right', words: ['right', 'r'] },
];

const TURNS: readonly RowChoice[] = [
  { value: 'none', words: ['none', '', 'straight', 'end', 'no'] },
  { value: 'left', words: ['left', 'l'] },
  { value: 'right', words: ['right', 'r'] },
  { value: 'up', words: ['up', 'u', 'rises'] },
  { value: 'down', words: ['down', 'd', 'drops'] },
];

const KINDS: readonly RowChoice[] = [
  { value: 'wall', words: ['wall', ''] },
  { value: 'fire-wall', words: ['fire wall', 'firewall'] },
  { value: 'floor', words: ['floor', 'slab'] },
];

const ZONE: readonly RowColumn[] = [
  { path: 'fromMm', name: 'from', headings: ['from', 'begins'], reading: 'length' },
  { path: 'toMm', name: 'to', headings: ['to', 'ends'], reading: 'length' },
  { path: 'reason', name: 'what stands there', headings: ['whatstandsthere', 'reason', 'what'], reading: 'text' },
];

/** The columns of each kind of row, in the order of the form. */
export const ROW_COLUMNS: Readonly<Record<RowGroup, readonly RowColumn[]>> = {
  legs: [
    { path: 'lengthMm', name: 'length', headings: ['length', 'leg', 'leglength'], reading: 'length' },
    { path: 'turn', name: 'turn', headings: ['turn', 'turnatitsend', 'turns', 'direction'], reading: TURNS },
    {
      path: 'tapsMustFace',
      name: 'tap-offs must face',
      headings: ['tapoffsmustface', 'tapsmustface', 'face', 'side'],
      reading: SIDES,
    },
  ],
  crossings: [
    {
      path: 'atMm',
      name: 'centre at',
      headings: ['centreat', 'at', 'centre', 'center', 'distance'],
      reading: 'length',
    },
    { path: 'thicknessMm', name: 'thickness', headings: ['thickness', 'thick'], reading: 'length' },
    { path: 'kind', name: 'kind', headings: ['kind', 'what', 'wall'], reading: KINDS },
    {
      path: 'fireRatingMin',
      name: 'fire rating',
      headings: ['firerating', 'firerated', 'rating', 'fireratingmin'],
      reading: 'number',
    },
  ],
  noJoint: ZONE,
  noSupport: ZONE,
};
