import type { JSX } from 'preact';
import type { Conductor } from '../../../../src/domain/quality/conductors.ts';
import type { Entries } from '../entries.ts';
import { FaultText } from '../fault-text.tsx';

export const POLE_ENDS = ['near', 'far'] as const;
export type PoleEnd = (typeof POLE_ENDS)[number];

/** How a tick is sent: `L1 near`. */
export function poleTick(pole: Conductor, end: PoleEnd): string {
  return `${pole} ${end}`;
}

/** Every pole at both ends of the contact set, one tick each: what was looked at, and nothing that was not. */
export function PoleTicks({ poles, entries }: { poles: readonly Conductor[]; entries: Entries }): JSX.Element {
  const fault = entries.fault('seen');
  return (
    <fieldset class="poles" aria-describedby={fault === undefined ? undefined : 'poles-fault'}>
      <legend>Seen seated, with your own eyes</legend>
      {fault !== undefined && <FaultText id="poles-fault">{fault}</FaultText>}
      <div class="pole-heads" aria-hidden="true">
        <span />
        <span>end towards the feed</span>
        <span>end away from it</span>
      </div>
      {poles.map((pole) => (
        <div class="pole" key={pole}>
          <strong>{pole}</strong>
          {POLE_ENDS.map((end) => (
            <label class="tick" key={end}>
              <input
                type="checkbox"
                name="seen"
                value={poleTick(pole, end)}
                checked={entries.has('seen', poleTick(pole, end))}
              />
              <span class="unseen">{pole}, </span>
              <span>{end}</span>
              <span class="unseen"> end</span>
            </label>
          ))}
        </div>
      ))}
    </fieldset>
  );
}
