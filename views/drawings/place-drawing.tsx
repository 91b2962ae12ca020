import type { JSX } from 'preact';
import type { UnitSystem } from '../../src/domain/model.ts';
import { formatLength } from '../../src/domain/units/format-length.ts';
import { FOOT, type Length } from '../../src/domain/units/length.ts';
import { FIRM, InkedBox, inksFor, THIN } from './ink.tsx';

export interface PlaceDrawingProps {
  readonly units: UnitSystem;
  /** What the drawing says, for those who do not see it. */
  readonly label: string;
  readonly from: Length;
  readonly to: Length;
  /** The sections in the place, and those beside it as far as they are seen. */
  readonly sections: readonly { readonly from: Length; readonly to: Length; readonly isNew: boolean }[];
  readonly joints: readonly { readonly at: Length; readonly isNew: boolean }[];
  readonly supports: readonly { readonly at: Length; readonly fate: 'stays' | 'goes' | 'comes' }[];
  readonly taps: readonly { readonly id: string; readonly at: Length; readonly was: Length | null }[];
  /** Where no joint may stand. */
  readonly zones: readonly { readonly from: number; readonly to: number }[];
}

const WIDTH = 340;
const HANGER = 32;
const BODY = { top: 54, bottom: 74 };
const GROUND = 114;

/** The place of one section with a little of the run beside it: what stands there, what comes, what goes. Small enough for a phone. */
export function PlaceDrawing(props: PlaceDrawingProps): JSX.Element {
  const inks = inksFor('screen');
  const beside = Math.min(4 * FOOT, (props.to - props.from) / 5);
  const [left, right] = [props.from - beside, props.to + beside];
  const x = (at: number) =>
    Math.round(((Math.min(Math.max(at, left), right) - left) / (right - left)) * WIDTH * 10) / 10;
  // A mark that would be cut off at the edge is left out.
  const isSeen = ({ at }: { readonly at: Length }) => x(at) >= 5 && x(at) <= WIDTH - 5;
  return (
    <svg class="place" viewBox={`0 0 ${WIDTH} ${GROUND}`} role="img" aria-label={props.label}>
      {props.zones.map((zone) => (
        <rect
          key={zone.from}
          x={x(zone.from)}
          y={BODY.bottom + 4}
          width={Math.max(1, x(zone.to) - x(zone.from))}
          height={3}
          fill={inks.ink}
        />
      ))}
      {props.sections.map(({ from, to, isNew }) => (
        <g key={from}>
          <InkedBox
            box={{ x: x(from), y: BODY.top, width: x(to) - x(from), height: BODY.bottom - BODY.top }}
            ink={isNew ? 'firm' : 'thin'}
            inks={inks}
          />
          {isNew && x(to) - x(from) > 44 && (
            <text x={(x(from) + x(to)) / 2} y={BODY.top + 14} text-anchor="middle" font-size={11} fill={inks.ink}>
              {formatLength(to - from, props.units)}
            </text>
          )}
        </g>
      ))}
      {props.supports.filter(isSeen).map(({ at, fate }) => (
        <g key={`${at} ${fate}`} stroke={inks.ink} stroke-width={fate === 'comes' ? FIRM : THIN}>
          <line
            x1={x(at)}
            x2={x(at)}
            y1={HANGER}
            y2={BODY.top}
            stroke-dasharray={fate === 'goes' ? '2 2' : undefined}
          />
          {fate === 'goes' && <path d={`M${x(at) - 4} ${HANGER - 4}l8 8m0 -8l-8 8`} fill="none" />}
          {fate !== 'goes' && <line x1={x(at) - 4} x2={x(at) + 4} y1={HANGER} y2={HANGER} />}
        </g>
      ))}
      {props.supports.filter(isSeen).map(({ at, fate }) =>
        fate === 'comes' ? (
          <text key={at} x={x(at)} y={HANGER - 4} text-anchor="middle" font-size={12} fill={inks.ink}>
            +
          </text>
        ) : null,
      )}
      {props.joints.filter(isSeen).map(({ at, isNew }) => (
        <g key={at}>
          <line x1={x(at)} x2={x(at)} y1={BODY.top - 4} y2={BODY.bottom + 4} stroke={inks.ink} stroke-width={FIRM} />
          {isNew && (
            <text x={x(at)} y={9} text-anchor="middle" font-size={11} fill={inks.ink}>
              {`joint ${formatLength(at, props.units)}`}
            </text>
          )}
        </g>
      ))}
      {props.taps.filter(isSeen).map(({ id, at, was }) => (
        <g key={id}>
          {was !== null && (
            <path
              d={`M${x(was)} ${BODY.bottom + 20}L${x(at)} ${BODY.bottom + 20}`}
              stroke={inks.ink}
              stroke-width={FIRM}
              stroke-dasharray="3 2"
            />
          )}
          <path
            d={`M${x(at) - 4} ${BODY.bottom + 16}h8v8h-8z`}
            fill={was === null ? inks.ground : inks.ink}
            stroke={inks.ink}
            stroke-width={THIN}
          />
          {was !== null && (
            <text x={x(at)} y={GROUND - 4} text-anchor="middle" font-size={11} fill={inks.ink}>
              {id}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}
