import dxfParser, { type DxfParser } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { FOOT, METRE } from '../../src/domain/units/length.ts';
import { planDxf } from '../../src/paper/drawings/plan-dxf.ts';
import { stripDxf } from '../../src/paper/drawings/strip-dxf.ts';
import type { PlanRun } from '../../views/drawings/floor-plan.tsx';
import { cornerRun, standardRun } from '../views/support/runs.ts';

// Read back with another program's reader, dxf-parser. $INSUNITS 1 is inches and 4 millimetres (DXF reference, from memory).

/** The package is one class, though its types call it a namespace. */
const Reader = dxfParser as unknown as typeof DxfParser;

function read(file: string) {
  const parsed = new Reader().parseSync(file);
  if (parsed === null) throw new Error('no DXF');
  const lines = parsed.entities.flatMap((entity) => {
    const { vertices } = entity as unknown as { vertices?: readonly { x: number; y: number; z: number }[] };
    if (entity.type !== 'LINE' || vertices === undefined) return [];
    const [a, b] = [vertices[0]!, vertices[1]!];
    return [{ layer: entity.layer, a, b, length: Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z) }];
  });
  const texts = parsed.entities.flatMap((entity) => {
    const { text } = entity as unknown as { text?: string };
    return entity.type === 'TEXT' && text !== undefined ? [text] : [];
  });
  return { parsed, lines, texts, on: (layer: string) => lines.filter((line) => line.layer === layer) };
}

const corner: PlanRun = {
  id: 'L1-R01-A',
  conductorSide: 'left',
  path: [
    { at: 0, x: 0, y: 0, z: 10 * FOOT },
    { at: 60 * FOOT, x: 60 * FOOT, y: 0, z: 10 * FOOT },
    { at: 64 * FOOT, x: 60 * FOOT, y: 0, z: 14 * FOOT },
    { at: 94 * FOOT, x: 60 * FOOT, y: 30 * FOOT, z: 14 * FOOT },
  ],
  pieces: [
    { from: 0, to: 20 * FOOT, state: 'planned' },
    { from: 20 * FOOT, to: 60 * FOOT, state: 'planned' },
  ],
  taps: [10 * FOOT],
  tapMarks: ['T1'],
  crossings: [{ at: 39 * FOOT, thickness: FOOT, kind: 'fire-wall' }],
};

describe('a drawing as DXF, read by another reader', () => {
  it('a plan in feet stands in inches: legs as long as they are, also the riser, walls as thick', () => {
    const { parsed, on, texts } = read(planDxf([corner], 'ft-in'));
    expect(parsed.header.$INSUNITS).toBe(1);
    expect(on('Runs').map(({ length }) => length)).toEqual([720, 48, 360]);
    const [near, far] = on('Fire walls');
    expect(far!.a.x - near!.a.x).toBeCloseTo(12, 6);
    expect(on('Joints').map(({ a }) => a.x)).toEqual([240]);
    expect(on('Tap-offs')[0]).toMatchObject({ a: { x: 120, y: 0, z: 120 } });
    expect(on('Tap-offs')[0]!.b.y).toBeGreaterThan(0); // to the left of a run that goes east
    expect(texts).toEqual(['L1-R01-A', 'T1']);
  });

  it('a metric plan stands in millimetres', () => {
    const metric = { ...corner, path: [corner.path[0]!, { at: 10 * METRE, x: 10 * METRE, y: 0, z: 10 * FOOT }] };
    const { parsed, on } = read(planDxf([metric], 'metric'));
    expect(parsed.header.$INSUNITS).toBe(4);
    expect(on('Runs')[0]!.length).toBeCloseTo(10_000, 6);
  });

  it('a strip lays each piece, joint, hanger and tap-off at its distance from the feed', () => {
    const drawn = standardRun();
    const { on, texts } = read(stripDxf({ ...drawn, units: 'ft-in' }));
    expect(on('Runs').map(({ length }) => Math.round(length * 1e6) / 1e6)).toEqual([
      240, 240, 240, 240, 240, 240, 120, 120,
    ]);
    expect(on('Joints').map(({ a }) => a.x)).toEqual([0, 240, 480, 720]);
    expect(on('Hangers').map(({ a }) => a.x)).toEqual([2, 11.5, 21.5, 31, 38.5, 48, 57.5, 67].map((feet) => feet * 12));
    expect(on('Tap-offs')).toHaveLength(20);
    expect(texts).toContain(`P04 10'-0"`);
    expect(read(stripDxf({ ...cornerRun(), units: 'ft-in' })).on('Fire walls')).toHaveLength(2);
  });

  it('names its layers in words, and a name with a line end in it stays one text', () => {
    const { parsed, texts } = read(planDxf([{ ...corner, id: 'A\n0\nLINE\n' }], 'ft-in'));
    expect(Object.keys(parsed.tables.layer.layers)).toEqual(
      expect.arrayContaining(['Runs', 'Tap-off marks', 'Fire walls']),
    );
    expect(texts[0]).toBe('A 0 LINE');
  });

  it('is the same to the byte when it is made again', () => {
    expect(planDxf([corner], 'ft-in')).toBe(planDxf([corner], 'ft-in'));
  });
});
