import { render } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { RUN_STATUSES } from '../../src/domain/quality/run-status.ts';
import { JOINT_STATES, PIECE_STATES, SUPPORT_STATES, TAP_STATES } from '../../src/domain/quality/states.ts';
import { Mark } from '../../views/components/mark.tsx';
import { StatusWord } from '../../views/components/status-word.tsx';
import { hatch, InkedBox, inksFor } from '../../views/drawings/ink.tsx';
import { type Ink, lookOf, STATES, type WorkState } from '../../views/drawings/states.ts';

const INKS: readonly Ink[] = ['dashed', 'thin', 'firm', 'half', 'solid', 'crossed', 'diagonal', 'struck'];
const box = { x: 0, y: 0, width: 22, height: 12 };
const drawn = (ink: Ink) => render(<InkedBox box={box} ink={ink} inks={inksFor('paper')} />);

describe('ink', () => {
  it.each(Object.entries(STATES))('each state of a %s has its own ink and its own word', (_, states) => {
    const looks = states.map((state: WorkState) => lookOf(state));
    expect(new Set(looks.map((look) => look.ink)).size).toBe(states.length);
    expect(new Set(looks.map((look) => look.word)).size).toBe(states.length);
  });

  it('the legends know every state that the record knows', () => {
    expect(STATES.piece).toEqual(expect.arrayContaining([...PIECE_STATES]));
    expect(STATES.joint).toEqual(expect.arrayContaining([...JOINT_STATES]));
    expect(STATES.support).toEqual(expect.arrayContaining([...SUPPORT_STATES]));
    expect(STATES.tap).toEqual(expect.arrayContaining([...TAP_STATES]));
  });

  it('every ink draws differently in black and white', () => {
    expect(new Set(INKS.map(drawn)).size).toBe(INKS.length);
  });

  it('planned is dashed, on site thin, hung firm, joined half filled, accepted solid', () => {
    expect(drawn('dashed')).toContain('stroke-dasharray');
    expect(Number(/stroke-width="([\d.]+)"/.exec(drawn('thin'))![1])).toBeLessThan(1);
    expect(Number(/stroke-width="([\d.]+)"/.exec(drawn('firm'))![1])).toBeGreaterThan(2);
    expect(drawn('half')).toContain('<rect x="0" y="6" width="22" height="6" fill="#000000"');
    expect(drawn('solid')).toBe('<rect x="0" y="0" width="22" height="12" fill="#000000"></rect>');
  });

  it('hatching stays inside its box', () => {
    for (const direction of ['rising', 'falling', 'both'] as const) {
      const numbers = hatch({ x: 10, y: 20, width: 30, height: 8 }, direction, 3)
        .split(/[ML ]/)
        .filter((part) => part !== '')
        .map(Number);
      const xs = numbers.filter((_, index) => index % 2 === 0);
      const ys = numbers.filter((_, index) => index % 2 === 1);
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(10);
      expect(Math.max(...xs)).toBeLessThanOrEqual(40);
      expect(Math.min(...ys)).toBeGreaterThanOrEqual(20);
      expect(Math.max(...ys)).toBeLessThanOrEqual(28);
    }
  });

  it('a mark always carries its word', () => {
    for (const state of Object.values(STATES).flat())
      expect(render(<Mark state={state} />)).toContain(lookOf(state).word);
  });

  it('the status of a run inks one cell more at each step', () => {
    const cells = RUN_STATUSES.map(
      (status) => render(<StatusWord status={status} />).match(/fill="currentColor"/g)?.length ?? 0,
    );
    expect(cells).toEqual([0, 1, 2, 3]);
  });
});
