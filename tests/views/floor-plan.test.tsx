import { render } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { FOOT, METRE } from '../../src/domain/units/length.ts';
import { compassWord } from '../../views/drawings/compass.ts';
import { FloorPlan } from '../../views/drawings/floor-plan.tsx';
import { pathParts, placeOnPath } from '../../views/drawings/plan/path-parts.ts';
import { placeNames } from '../../views/drawings/plan/place-names.ts';
import { scaleBar } from '../../views/drawings/plan/scale-bar.ts';
import { floor } from './support/runs.ts';

const corner = [
  { at: 0, x: 0, y: 0, z: 0 },
  { at: 100, x: 100, y: 0, z: 0 },
  { at: 160, x: 100, y: 60, z: 0 },
];

describe('the plan of a level', () => {
  it('cuts a piece that goes round a corner into its straight bits', () => {
    expect(pathParts(corner, 90, 120)).toEqual([
      { from: { x: 90, y: 0 }, to: { x: 100, y: 0 } },
      { from: { x: 100, y: 0 }, to: { x: 100, y: 20 } },
    ]);
  });

  it('finds a distance on the run, and no heading on a vertical leg', () => {
    expect(placeOnPath(corner, 130)).toEqual({ x: 100, y: 30, heading: Math.PI / 2 });
    const riser = [
      { at: 0, x: 5, y: 5, z: 0 },
      { at: 50, x: 5, y: 5, z: 50 },
    ];
    expect(placeOnPath(riser, 20)?.heading).toBeNull();
  });

  it('draws to one scale, north up: 20 ft on the bar is 20 ft of run', () => {
    const svg = render(<FloorPlan {...floor()} units="ft-in" ink="paper" tallest={640} />);
    const bar = Number(/<rect x="26" y="[\d.]+" width="([\d.]+)" height="6" fill="none"/.exec(svg)![1]);
    const first = Number(/<rect x="0" y="-4" width="([\d.]+)" height="8" fill="#000000"/.exec(svg)![1]);
    expect(svg).toContain('20 ft</text>');
    expect(first).toBeCloseTo(bar, 0); // the first piece is a 20 ft section, accepted
  });

  it('measures with the longest round length that fits', () => {
    expect(scaleBar(37 * FOOT, 'ft-in').text).toBe('20 ft');
    expect(scaleBar(12.4 * METRE, 'metric').text).toBe('10 m');
  });

  it('keeps the names of runs that begin side by side apart', () => {
    const names = ['A', 'B', 'C'].map(
      (text, i) => ({ text, start: [50, 40 + 3 * i], end: [400, 40 + 3 * i] }) as const,
    );
    const boxes = placeNames(names, 11, []).map((name) => name.box);
    for (let i = 1; i < boxes.length; i++)
      expect(boxes[i]!.y).toBeGreaterThanOrEqual(boxes[i - 1]!.y + boxes[i - 1]!.height);
  });

  it('never writes the name of a branch on the run it leaves', () => {
    const parent = { x: 40, y: 196, width: 300, height: 8 };
    const branch = { x: 196, y: 50, width: 8, height: 150 };
    const [name] = placeNames([{ text: 'R06-BR', start: [200, 200], end: [200, 54] }], 11, [parent, branch]);
    expect(name!.box.y + name!.box.height).toBeLessThan(parent.y);
    expect(name!.box.x).toBeGreaterThan(branch.x + branch.width);
  });

  it('says compass directions as people do', () => {
    expect([0, 45, 90, 180, 270, -90, 450].map(compassWord)).toEqual([
      'east',
      'north-east',
      'north',
      'west',
      'south',
      'south',
      'north',
    ]);
    expect(compassWord(123)).toBe('north-west (123°)');
  });

  it('shows an empty level without falling over', () => {
    expect(render(<FloorPlan level="Roof" runs={[]} units="metric" ink="screen" />)).toContain('Plan of Roof');
  });
});
