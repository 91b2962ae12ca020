import { describe, expect, it } from 'vitest';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import type { RunDocument } from '../../../src/document/job-document.ts';
import { newId, otherSide, renamed, strangeWords } from '../../../src/document/several/naming.ts';

function aRun(id: string, level: string, side: 'A' | 'B' | null = 'A'): RunDocument {
  return { ...demoJob().runs[0]!, id, level, side };
}

describe('the name of a copy', () => {
  it.each([
    ['F1-R01-A', 'F1', 'F2', 0, 'F2-R01-A'],
    ['F1-R01-A', 'F1', 'F1', 9, 'F1-R10-A'],
    ['F1-R99-A', 'F1', 'F1', 1, 'F1-R100-A'],
    ['F1-R06-A-BR', 'F1', 'F3', 1, 'F3-R07-A-BR'],
    ['F1-R06-A-BR2', 'F1', 'F1', 1, 'F1-R07-A-BR2'],
    ['B1-F1-R01-A', 'B1-F1', 'B2-F4', 2, 'B2-F4-R03-A'],
    ['1-12-A', '1', '2', 1, '2-13-A'],
    ['L.1/Row 3', 'L.1', 'L.2', 1, 'L.2/Row 4'],
    ['F10-R1', 'F1', 'F2', 0, 'F10-R1'], // F10 is another word than F1
    ['Spine', 'F1', 'F2', 3, 'Spine'],
    ['Halle-Ü2-07', 'Ü2', 'Ü3', 1, 'Halle-Ü3-08'],
  ])('%s on %s, made on %s with the row counted on by %i, is %s', (id, level, to, rowsOn, expected) => {
    expect(newId(aRun(id, level), { level: to, rowsOn, side: 'A' }, null)).toBe(expected);
  });

  it('a naming of one’s own has its words filled in, and others are told', () => {
    const run = aRun('F1-R07-A', 'F1');
    const place = { level: 'F2', rowsOn: 2, side: 'A' as const };
    expect(newId(run, place, '{level}.{row}.{side} of {run}')).toBe('F2.09.A of F1-R07-A');
    expect(newId(aRun('Spine', 'F1'), place, '{run} {row}')).toBe('Spine 3');
    expect(strangeWords('{level}-{floor}-{x}')).toEqual(['floor', 'x']);
  });
});

it('texts are renamed where level or row stand as words, at one go', () => {
  const run = aRun('F1-R01-A', 'F1');
  const place = { level: 'F2', rowsOn: 1, side: 'A' as const };
  expect(renamed('cabinet F1-R01-C12', run, place)).toBe('cabinet F2-R02-C12');
  expect(renamed('rack 12', run, place)).toBe('rack 12');
  expect(renamed('R01 and R010 on F1', run, place)).toBe('R02 and R010 on F2');
});

describe('the letter of the feed side', () => {
  it.each([
    ['F1-R01-A', 'F1-R01-B'],
    ['PDU-1A', 'PDU-1B'],
    ['A-A-AB', 'A-B-AB'],
    ['UPS A, east', 'UPS B, east'],
    ['PANEL', 'PANEL'],
  ])('in %s gives %s', (text, expected) => {
    expect(otherSide(text, 'A', 'B')).toBe(expected);
  });
});
