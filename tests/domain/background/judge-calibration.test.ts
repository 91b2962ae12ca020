import { describe, expect, it } from 'vitest';
import { judgeCalibration, sheetScale } from '../../../src/domain/background/judge-calibration.ts';
import { fromMm } from '../../../src/domain/units/length.ts';

const at = (px: number, py: number, xMm: number, yMm: number) => ({
  pixel: { x: px, y: py },
  place: { x: fromMm(xMm), y: fromMm(yMm) },
});
const SHEET = { width: 5400, height: 3600, dotsPerInch: 150 };

describe('the scale of a sheet', () => {
  it('at 1:100 a pixel at 150 dots to the inch shows 16.933 mm', () => {
    expect(sheetScale(fromMm(16.9333), SHEET)).toBeCloseTo(100, 1);
    expect(sheetScale(80 * ((25.4 / 150) * 100), SHEET)).toBeCloseTo(100, 9); // a length need not be whole here
  });

  it('is not known of a picture without paper', () => {
    expect(sheetScale(1000, { dotsPerInch: null })).toBeNull();
  });
});

describe('what is odd about a calibration', () => {
  it('nothing, where 3000 pixels of a sheet at 1:100 are 50.8 m', () => {
    expect(judgeCalibration([at(100, 100, 0, 0), at(3100, 100, 50_800, 0)], SHEET)).toEqual([]);
  });

  it('nothing, where 3000 pixels of a sheet at 1/8 in to the foot are 160 ft', () => {
    // 3000 / 150 = 20 in of paper; an eighth of an inch to the foot makes it 160 ft, 48 768 mm.
    expect(judgeCalibration([at(100, 100, 0, 0), at(3100, 100, 48_768, 0)], SHEET)).toEqual([]);
  });

  it('points at arm’s length: 64.9 pixels of 6490 let one pixel grow to a hundred', () => {
    const [note, ...more] = judgeCalibration([at(100, 100, 0, 0), at(164.9, 100, 1098.973_3, 0)], SHEET);
    expect(more).toEqual([]);
    // diagonal hypot(5400, 3600) = 6489.99; 1098.9733 / 64.9 = 16.9333 mm a pixel, 1:100; times 6489.99 / 64.9 = 1693 mm
    expect(note).toContain('65 pixels apart, 1 % of the picture’s diagonal');
    expect(note).toContain('by 1693 mm');
    expect(note).toContain('Choose points farther apart');
  });

  it('a length typed in the wrong unit: 100 ft taken for 100 m', () => {
    const [note, ...more] = judgeCalibration([at(0, 0, 0, 0), at(3000, 0, 3_000_000, 0)], SHEET);
    expect(note).toContain('One pixel shows 1000 mm');
    expect(more.join()).toContain('1:5906'); // 1000 mm a pixel, 150 to the inch: 150 000 / 25.4
  });

  it('a sheet that was shrunk to the printer’s paper: 1:103, 3 % off 1:100', () => {
    const notes = judgeCalibration([at(0, 0, 0, 0), at(3000, 0, 52_324, 0)], SHEET);
    expect(notes).toHaveLength(1);
    expect(notes[0]).toContain('1:103, 3 % off the nearest usual scale, 1:100');
    expect(notes[0]).toContain('Check a third distance');
  });

  it('a photograph has no scale of paper to be off', () => {
    const photo = { ...SHEET, dotsPerInch: null };
    expect(judgeCalibration([at(0, 0, 0, 0), at(3000, 0, 52_324, 0)], photo)).toEqual([]);
  });
});
