import { render } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { RangeBar } from '../../views/drawings/range-bar.tsx';

const draw = (likely: number, p10: number, p50: number, p80: number, p90: number) =>
  render(<RangeBar range={{ likely, p10, p50, p80, p90 }} of="Hours" write={String} ink="paper" width={740} />);

describe('the range of an estimate', () => {
  it('is drawn to scale: outlined from P10 to P90, inked from P50 to P80', () => {
    const svg = draw(100, 100, 160, 190, 200);
    expect(svg).toContain('<rect y="8" height="14" x="70" width="600" fill="none"');
    expect(svg).toContain('<rect y="8" height="14" x="430" width="180" fill="#000000"');
  });

  it('says its figures in words', () => {
    expect(draw(100, 90, 110, 130, 140)).toContain(
      '<title>Hours: P10 90, P50 110, P80 130, P90 140, likely 100</title>',
    );
  });

  it('shows a range without spread, or a likely sum outside it, without falling over', () => {
    expect(draw(5, 5, 5, 5, 5)).not.toMatch(/NaN|Infinity/);
    expect(draw(50, 90, 110, 130, 140)).not.toMatch(/x="-|NaN/);
  });
});
