import { describe, expect, test } from 'vitest';
import { jointSheet } from '../../../src/domain/quality/joint-sheet.ts';
import { DEMO_TYPE } from './cast.ts';

const withSteps = (steps: readonly string[] | null, torqueNm: number | null = null) =>
  jointSheet({ poles: 3, neutral: 'full', joint: { ...DEMO_TYPE.joint, steps, torqueNm } });

describe('the step list of a joint', () => {
  test('markings say what a step asks, and are not part of its words', () => {
    const sheet = jointSheet(DEMO_TYPE);
    expect(sheet.steps?.map(({ kind }) => kind)).toEqual([
      'work',
      'work',
      'torque',
      'work',
      'hold',
      'work',
      'torque',
      'check',
    ]);
    expect(sheet.steps?.[4]?.text).toBe('seating worked to both ends and seen, pole by pole');
    expect(sheet.remarks).toEqual([]);
  });

  test('three phases and a neutral are four poles to see, three phases alone are three', () => {
    expect(jointSheet(DEMO_TYPE).poles).toEqual(['L1', 'L2', 'L3', 'N']);
    expect(jointSheet({ ...DEMO_TYPE, neutral: 'none' }).poles).toEqual(['L1', 'L2', 'L3']);
    expect(jointSheet({ ...DEMO_TYPE, neutral: 'double' }).poles).toEqual(['L1', 'L2', 'L3', 'N']);
  });

  test('without a marked hold the first step whose words say that seating was seen is the hold point, and the card says so', () => {
    const sheet = withSteps([
      'contact set pushed to its seat',
      'every blade seated, seen from both ends',
      'seating looked at again',
      'lower clamp on',
    ]);
    expect(sheet.steps?.map(({ kind }) => kind)).toEqual(['work', 'hold', 'work', 'work']);
    expect(sheet.remarks).toEqual([
      { code: 'sheet.hold-from-words', args: { step: 2, text: 'every blade seated, seen from both ends' } },
    ]);
  });

  test('words about a seating tool alone are no hold point', () => {
    const sheet = withSteps(['seating tool worked to both ends', 'lower clamp on']);
    expect(sheet.steps?.map(({ kind }) => kind)).toEqual(['work', 'work']);
    expect(sheet.remarks).toEqual([{ code: 'sheet.no-hold', args: {} }]);
  });

  test('a sheet with a torque and no torque step says that the card asks for none', () => {
    expect(withSteps(['HOLD: every pole seen'], 20).remarks).toEqual([
      { code: 'sheet.torque-without-step', args: { torqueNm: 20 } },
    ]);
  });

  test('a type without steps has no card to work by', () => {
    expect(withSteps(null).steps).toBeNull();
    expect(withSteps([]).steps).toBeNull();
  });
});
