import { describe, expect, it } from 'vitest';
import { feet } from '../../support/job.ts';
import { inFeet, laidOut, layoutType, lengthsOf, lRun, messages, placesOf } from './l-run.ts';

// Expected values: job map, scenario T1 (invented job, worked by hand there).
describe('the L-shaped run of scenario T1', () => {
  const layout = laidOut(lRun());

  it('is 1 ft short of stock when the corner stands at 62 ft', () => {
    const drawn = lRun({ legs: [{ ...lRun().legs[0]!, length: feet(62) }, lRun().legs[1]!] });
    const message = messages(laidOut(drawn), 'section.no-cover')[0];
    expect(message).toContain(`61'-0" is not, 1'-0" short of stock`);
    expect(message).toContain(`Shift the feed 1'-0" along the heading (60'-0" left to cover)`);
    expect(message).toContain(`shorten the part by 1'-0" to 60'-0"`);
    expect(message).toContain(`a factory cut of 11'-0"`);
  });

  it('covers the first leg with 20/10/20/10 around the fire wall, and 35 ft past the corner', () => {
    expect(lengthsOf(layout.pieces)).toEqual([20, 10, 20, 10, 2, 20, 10, 5]);
    expect(inFeet(layout.length)).toBe(97);
  });

  it('has 8 pieces and, with the feed, 8 joints, none of them between 36.5 and 41.5 ft', () => {
    expect(placesOf(layout.joints)).toEqual([0, 20, 30, 50, 60, 62, 82, 92]);
  });

  it('takes the inside elbow with the conductors on the left, and its taps face north, then west', () => {
    expect(layout.pieces[4]).toMatchObject({ kind: 'elbow', hand: 'inside', from: feet(60), to: feet(62) });
    expect(layout.facing).toEqual([
      { leg: 1, compassDeg: 90, relative: 'left' },
      { leg: 2, compassDeg: 180, relative: 'left' },
    ]);
  });

  it('takes the outside elbow with the conductors on the right, and its taps face south, then east', () => {
    const flipped = laidOut(lRun({ conductorSide: 'right' }));
    expect(flipped.pieces[4]?.hand).toBe('outside');
    expect(flipped.facing.map((facing) => facing.compassDeg)).toEqual([270, 0]);
  });

  it('hangs from 7 + 5 supports at 10 ft', () => {
    const places = placesOf(layout.supports);
    expect(places.filter((place) => place < 61)).toHaveLength(7);
    expect(places.filter((place) => place > 61)).toHaveLength(5);
  });

  it('hangs from 13 + 8 supports at 5 ft', () => {
    const type = layoutType();
    const places = placesOf(laidOut(lRun(), { ...type, support: { ...type.support, maxSpacing: feet(5) } }).supports);
    expect(places.filter((place) => place < 61)).toHaveLength(13);
    expect(places.filter((place) => place > 61)).toHaveLength(8);
  });

  it('runs from the feed east to the corner and then north in plan', () => {
    const points = layout.path.map(({ at, x, y }) => [inFeet(at), inFeet(x), inFeet(y)]);
    expect(points).toEqual([
      [0, 0, 0],
      [61, 61, 0],
      [97, 61, 36],
    ]);
  });
});
