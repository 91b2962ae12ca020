import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Lane, type LaneLabel, overflow, placeLabels } from '../../views/drawings/label-lane.ts';

const label = fc.record({
  x: fc.double({ min: 0, max: 900, noNaN: true }),
  width: fc.double({ min: 4, max: 120, noNaN: true }),
});
const lane = fc.record({
  obstacles: fc.array(fc.double({ min: 0, max: 900, noNaN: true }), { maxLength: 12 }),
  rows: fc.integer({ min: 1, max: 5 }),
});

interface Standing {
  readonly left: number;
  readonly right: number;
  readonly x: number;
  readonly row: number;
  readonly wanted: number;
}

function stand(labels: readonly LaneLabel[], room: Lane): Standing[] {
  return placeLabels(labels, room).map(({ labelX, row }, index) => ({
    left: labelX - labels[index]!.width / 2,
    right: labelX + labels[index]!.width / 2,
    x: labelX,
    row,
    wanted: labels[index]!.x,
  }));
}

const check = (law: (standing: readonly Standing[], room: Lane) => void) =>
  fc.assert(
    fc.property(fc.array(label, { maxLength: 60 }), lane, (labels, { obstacles, rows }) => {
      const room = { from: 0, to: 900, obstacles, rows };
      law(stand(labels, room), room);
    }),
    { numRuns: 400 },
  );

describe('labels of a lane', () => {
  it('no two labels of a row overlap, whatever is asked for', () => {
    check((standing) => {
      for (const a of standing)
        for (const b of standing)
          if (a !== b && a.row === b.row) expect(a.right <= b.left || b.right <= a.left).toBe(true);
    });
  });

  it('no label covers a rod or an extension line', () => {
    check((standing, room) => {
      for (const one of standing)
        for (const line of room.obstacles) expect(line <= one.left || line >= one.right).toBe(true);
    });
  });

  it('no leader to an outer row runs through a label of an inner one', () => {
    check((standing) => {
      for (const outer of standing)
        for (const inner of standing)
          if (inner.row < outer.row) expect(outer.x <= inner.left || outer.x >= inner.right).toBe(true);
    });
  });

  it('leaders never cross: labels stand in the order of the things they name', () => {
    check((standing) => {
      const byThing = [...standing].sort((a, b) => a.wanted - b.wanted);
      for (let i = 1; i < byThing.length; i++)
        if (byThing[i]!.wanted > byThing[i - 1]!.wanted) expect(byThing[i]!.x).toBeGreaterThan(byThing[i - 1]!.x);
    });
  });

  it('a label with room about it stands exactly at its place, in the nearest row', () => {
    const placed = placeLabels(
      [
        { x: 100, width: 30 },
        { x: 300, width: 30 },
      ],
      { from: 0, to: 900, obstacles: [], rows: 3 },
    );
    expect(placed).toEqual([
      { labelX: 100, row: 0 },
      { labelX: 300, row: 0 },
    ]);
  });

  it('labels too wide for the lane are told by how far they stand out of it', () => {
    const labels = Array.from({ length: 10 }, (_, i) => ({ x: i * 5, width: 30 }));
    const room = { from: 0, to: 100, obstacles: [], rows: 1 };
    expect(overflow(labels, placeLabels(labels, room), room)).toBeGreaterThan(200);
  });

  it('labels crowded against the right end move to the left', () => {
    const labels = [880, 890, 900].map((x) => ({ x, width: 40 }));
    const room = { from: 0, to: 900, obstacles: [], rows: 1 };
    expect(overflow(labels, placeLabels(labels, room), room)).toBe(0);
  });
});
