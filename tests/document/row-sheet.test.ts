import { describe, expect, it } from 'vitest';
import { takePasted } from '../../src/document/run-form/pasted.ts';
import { lengthReadings } from '../../src/document/run-form/readings.ts';
import { MOST_ROWS, pasteRows } from '../../src/document/run-form/row-sheet.ts';

const EMPTY = { 'legs[0].lengthMm': '', 'legs[0].turn': 'none' };

describe('rows pasted from a spreadsheet', () => {
  it('legs without headings come in the columns of the form, one a row', () => {
    const read = pasteRows('legs', `70'-0"\tleft\n12.5 ft\tUp\tRight\r\n3810 mm\n`, EMPTY, null);
    expect(read).toEqual({
      ok: true,
      rows: 3,
      entered: {
        'legs[0].lengthMm': `70'-0"`,
        'legs[0].turn': 'left',
        'legs[0].tapsMustFace': '',
        'legs[1].lengthMm': '12.5 ft',
        'legs[1].turn': 'up',
        'legs[1].tapsMustFace': 'right',
        'legs[2].lengthMm': '3810 mm',
        'legs[2].turn': 'none',
        'legs[2].tapsMustFace': '',
      },
    });
  });

  it('headings give the order of the columns and the unit of bare figures; a column of row numbers is passed over', () => {
    const read = pasteRows('legs', 'No.\tTurn\tLength (mm)\n1\tleft\t21336\n2\t\t6 096', {}, null);
    expect(read.ok && read.entered).toEqual({
      'legs[0].tapsMustFace': '',
      'legs[1].tapsMustFace': '',
      'legs[0].turn': 'left',
      'legs[0].lengthMm': '21336 mm',
      'legs[1].turn': 'none',
      'legs[1].lengthMm': '6 096 mm',
    });
  });

  it('inch marks are marks, whether the spreadsheet quoted the cell or not', () => {
    const read = pasteRows('crossings', `42'-6"\t8"\tFire wall\t120 min\n"50'-0"""\t"8"""\twall`, {}, null);
    expect(read.ok && read.entered).toEqual({
      'crossings[0].atMm': `42'-6"`,
      'crossings[0].thicknessMm': '8"',
      'crossings[0].kind': 'fire-wall',
      'crossings[0].fireRatingMin': '120',
      'crossings[1].atMm': `50'-0"`,
      'crossings[1].thicknessMm': '8"',
      'crossings[1].kind': 'wall',
    });
  });

  it('a block pasted into a cell fills from there on and leaves everything else', () => {
    const before = {
      'legs[0].lengthMm': '10 ft',
      'legs[0].turn': 'left',
      'legs[1].lengthMm': '20 ft',
      'legs[1].tapsMustFace': 'left',
      area: 'Hall',
    };
    const read = pasteRows('legs', 'right\nup', before, { row: 1, path: 'turn' });
    expect(read.ok && read.entered).toEqual({
      ...before,
      'legs[1].turn': 'right',
      'legs[2].turn': 'up',
      'legs[2].tapsMustFace': '',
    });
  });

  it('a word that is no turn is told by row and column with what was probably meant, and no entry changes', () => {
    const read = pasteRows('legs', 'length\tturn\n70 ft\tlefft\n10 ft\t45°', EMPTY, null);
    expect(read.ok).toBe(false);
    expect(!read.ok && read.faults).toEqual([
      {
        row: 2,
        column: 'turn',
        value: 'lefft',
        problem: '"lefft" is not none, left, right, up or down.',
        remedy: 'Did you mean left?',
      },
      {
        row: 3,
        column: 'turn',
        value: '45°',
        problem: '"45°" is not none, left, right, up or down.',
        remedy: 'Write one of these.',
      },
    ]);
  });

  it('a heading that is not known, cells too many, an open quote and rows without end are each told', () => {
    const faultsOf = (text: string) => {
      const read = pasteRows('legs', text, {}, null);
      return read.ok ? [] : read.faults.map(({ row, problem, remedy }) => `${row}: ${problem} ${remedy}`);
    };
    expect(faultsOf('length\tslope\n10 ft\t3')[0]).toMatch(/^1: This column is not known\. Take the column out/);
    expect(faultsOf('10 ft\tleft\tright\t9')[0]).toMatch(
      /^1: The row has more cells than there are columns\. Paste length/,
    );
    expect(faultsOf('10 ft\n20 ft\tleft\tright\t9')[0]).toMatch(/^2: The row has more cells/);
    expect(faultsOf('"10 ft\tleft')[0]).toMatch(/quotation mark is not closed/);
    expect(faultsOf('10 ft\n'.repeat(MOST_ROWS + 1))[0]).toMatch(/201 rows\. Give at most 200/);
  });

  it('what could not be taken stays in its field, what could leaves it', () => {
    const taken = takePasted({ 'paste.legs': 'x\ty\tz\tw', 'paste.crossings': '10 ft\t8"', area: 'Hall' });
    expect(taken.filled).toEqual({ crossings: 1 });
    expect(taken.faults.legs?.length).toBeGreaterThan(0);
    expect(taken.entered).toMatchObject({ area: 'Hall', 'crossings[0].atMm': '10 ft', 'crossings[0].kind': 'wall' });
    expect(taken.entered).not.toHaveProperty('paste.crossings');
  });
});

describe('how a length was read', () => {
  it('is shown for figures that the program writes otherwise, and for no other', () => {
    const entered = {
      'legs[0].lengthMm': '10.5',
      'legs[1].lengthMm': `10'-6"`,
      'legs[2].lengthMm': '3048 mm',
      dropMm: '2',
    };
    expect(lengthReadings(entered, 'ft-in')).toEqual([
      { field: 'dropMm', said: `= 2'-0"` },
      { field: 'legs[0].lengthMm', said: `= 10'-6"` },
      { field: 'legs[2].lengthMm', said: `= 10'-0"` },
    ]);
    expect(lengthReadings({ 'legs[0].lengthMm': '3810', 'legs[1].lengthMm': `12'-6"` }, 'metric')).toEqual([
      { field: 'legs[1].lengthMm', said: '= 3.810 m' },
    ]);
  });

  it('leaves what cannot be read, and what is asked about, to their own words', () => {
    expect(lengthReadings({ 'legs[0].lengthMm': '10 6', 'legs[1].lengthMm': '10.6' }, 'ft-in')).toEqual([]);
  });
});
