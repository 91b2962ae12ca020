import type { JSX } from 'preact';
import type { Underlay } from './props.ts';
import type { View } from './view.ts';

/** The picture at its place under the plan. Its pixels count down as the drawing does, so it is turned and never mirrored. */
export function Under({ underlay, view }: { underlay: Underlay; view: View }): JSX.Element {
  const { href, width, height, strength } = underlay;
  return (
    <image
      href={href}
      class="under"
      width={width}
      height={height}
      preserveAspectRatio="none"
      transform={matrixOf(underlay, view)}
      opacity={strength === 1 ? undefined : strength}
    />
  );
}

/**
 * From pixels to the drawing (SVG 1.1, 7.4: x' = ax + cy + e, y' = bx + dy + f): the similarity in plan, then the view's one scale
 * with y turned to point down. Eight digits: over 6000 pixels that is a ten-thousandth of a drawing unit.
 */
function matrixOf({ placed }: Underlay, view: View): string {
  const [a, b] = [view.scale * placed.a, view.scale * placed.b];
  const numbers = [a, -b, b, a, view.toX(placed.x), view.toY(placed.y)];
  return `matrix(${numbers.map((number) => Number(number.toPrecision(8))).join(' ')})`;
}
