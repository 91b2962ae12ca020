import type { ComponentChildren, JSX } from 'preact';
import { type Box, tenth } from './scale.ts';
import type { Ink } from './states.ts';

/** `screen` follows the theme of the page; `paper` is black on white with plain attributes, for PDF. */
export type InkMode = 'screen' | 'paper';

export interface Inks {
  readonly ink: string;
  readonly ground: string;
}

export function inksFor(mode: InkMode): Inks {
  return mode === 'paper' ? { ink: '#000000', ground: '#ffffff' } : { ink: 'currentColor', ground: 'var(--paper)' };
}

export const FIRM = 2.2;
export const THIN = 0.9;

/** A rectangle drawn by its ink. Every part stays inside `box`, so marks of all states take the same room. */
export function InkedBox({ box, ink, inks }: { box: Box; ink: Ink; inks: Inks }): JSX.Element {
  switch (ink) {
    case 'dashed':
      return <Outline box={box} inks={inks} width={1.1} dash={Math.min(box.width, box.height) < 9 ? '2 1.6' : '4 3'} />;
    case 'thin':
      return <Outline box={box} inks={inks} width={THIN} />;
    case 'firm':
      return <Outline box={box} inks={inks} width={FIRM} />;
    case 'half':
      return (
        <Outline box={box} inks={inks} width={FIRM}>
          <rect {...tenths(lowerHalf(box))} fill={inks.ink} />
        </Outline>
      );
    case 'solid':
      return <rect {...tenths(box)} fill={inks.ink} />;
    case 'crossed':
      return (
        <Outline box={box} inks={inks} width={1.4}>
          <path d={hatch(box, 'both', finePitch(box))} stroke={inks.ink} stroke-width={0.9} fill="none" />
        </Outline>
      );
    case 'diagonal':
      return (
        <Outline box={box} inks={inks} width={FIRM}>
          <path d={hatch(box, 'rising', finePitch(box) * 2)} stroke={inks.ink} stroke-width={2.6} fill="none" />
        </Outline>
      );
    case 'struck':
      return (
        <Outline box={box} inks={inks} width={THIN}>
          <path d={strike(box)} stroke={inks.ink} stroke-width={1.6} fill="none" />
        </Outline>
      );
  }
}

function Outline(props: { box: Box; inks: Inks; width: number; dash?: string; children?: ComponentChildren }) {
  const { box, inks, width, dash, children } = props;
  const inset = {
    x: box.x + width / 2,
    y: box.y + width / 2,
    width: Math.max(box.width - width, 0.1),
    height: Math.max(box.height - width, 0.1),
  };
  return (
    <>
      <rect {...tenths(box)} fill={inks.ground} />
      {children}
      <rect {...tenths(inset)} fill="none" stroke={inks.ink} stroke-width={width} stroke-dasharray={dash} />
    </>
  );
}

/** Parallel strokes clipped to the box by arithmetic, because a PDF has no pattern that every reader draws alike. */
export function hatch(box: Box, direction: 'rising' | 'falling' | 'both', pitch: number): string {
  if (direction === 'both') return hatch(box, 'rising', pitch) + hatch(box, 'falling', pitch);
  const right = box.x + box.width;
  const bottom = box.y + box.height;
  const strokes: string[] = [];
  for (let along = pitch; along < box.width + box.height; along += pitch) {
    if (direction === 'rising') {
      const sum = box.x + box.y + along;
      const x1 = Math.max(box.x, sum - bottom);
      const x2 = Math.min(right, sum - box.y);
      strokes.push(`M${tenth(x1)} ${tenth(sum - x1)}L${tenth(x2)} ${tenth(sum - x2)}`);
    } else {
      const difference = box.x - bottom + along;
      const x1 = Math.max(box.x, difference + box.y);
      const x2 = Math.min(right, difference + bottom);
      strokes.push(`M${tenth(x1)} ${tenth(x1 - difference)}L${tenth(x2)} ${tenth(x2 - difference)}`);
    }
  }
  return strokes.join('');
}

function finePitch(box: Box): number {
  return Math.min(5.5, Math.max(3, Math.min(box.width, box.height) / 2.5));
}

function lowerHalf(box: Box): Box {
  return { ...box, y: box.y + box.height / 2, height: box.height / 2 };
}

function strike(box: Box): string {
  const y = tenth(box.y + box.height / 2);
  return `M${tenth(box.x - 2)} ${y}L${tenth(box.x + box.width + 2)} ${y}`;
}

function tenths(box: Box): Box {
  return { x: tenth(box.x), y: tenth(box.y), width: tenth(box.width), height: tenth(box.height) };
}
