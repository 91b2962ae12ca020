import type { JSX } from 'preact';
import type { Entered } from '../../components/fault-of.ts';

export interface PictureWithPinsProps {
  readonly href: string;
  readonly width: number;
  readonly height: number;
  readonly name: string;
  readonly calibration: Entered;
  readonly settable: 'yes' | 'no';
}

/** How many drawing units wide the picture is shown before a script knows better; pins are sized for that. */
const SHOWN = 1100;

/** The picture with its two points. With the script a press sets them; without it their fields below do. */
export function PictureWithPins(props: PictureWithPinsProps): JSX.Element {
  const { href, width, height, name, calibration, settable } = props;
  const scale = Math.max(1, width / SHOWN);
  return (
    <div id="pinned" class="stack" data-settable={settable === 'yes' ? 'yes' : undefined}>
      <div class="row" data-scripted hidden>
        <fieldset class="choices entry fillin">
          <legend>A press on the picture sets</legend>
          {['A', 'B'].map((letter, index) => (
            <label key={letter} class="tick">
              <input type="radio" name="pin" value={index} checked={index === 0} />
              <span>point {letter}</span>
            </label>
          ))}
        </fieldset>
        <button class="button" type="button" data-zoom="in">
          Larger
        </button>
        <button class="button" type="button" data-zoom="out">
          Smaller
        </button>
      </div>
      <p class="hint" data-scripted hidden id="pin-keys">
        Or with keys, the picture focused: arrows move the point by a pixel, with Shift by 20; Enter goes to the other.
      </p>
      {settable === 'yes' && (
        <p class="hint" data-unscripted>
          Their pixels are read in any program that shows pictures: <a href={href}>the picture by itself</a>.
        </p>
      )}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard (WCAG 2.1.1). */}
      <section class="drawing" tabIndex={0} aria-label={`${name}, scrolls`} aria-describedby="pin-keys">
        <svg class="picture" viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img">
          <title>{`${name}, ${width} by ${height} pixels`}</title>
          <image href={href} width={width} height={height} />
          {[0, 1].map((index) => (
            <Pin
              key={index}
              index={index}
              scale={scale}
              x={calibration[`points[${index}].pixelX`] ?? ''}
              y={calibration[`points[${index}].pixelY`] ?? ''}
            />
          ))}
        </svg>
      </section>
      <p role="status" class="soft" data-scripted hidden />
    </div>
  );
}

function Pin({ index, scale, x, y }: { index: number; scale: number; x: string; y: string }) {
  const isSet = /^\d+(\.\d+)?$/.test(x) && /^\d+(\.\d+)?$/.test(y);
  const arms = 'M-22 0H-5M5 0H22M0 -22V-5M0 5V22';
  return (
    <g
      class="pin"
      data-pin={index}
      transform={`translate(${isSet ? `${x} ${y}` : '0 0'}) scale(${Number(scale.toPrecision(4))})`}
      visibility={isSet ? undefined : 'hidden'}
    >
      <path d={arms} class="halo" />
      <circle r={11} class="halo" />
      <path d={arms} />
      <circle r={11} />
      <text x={14} y={-12}>
        {index === 0 ? 'A' : 'B'}
      </text>
    </g>
  );
}
