import { TextField } from '../../../components/field.tsx';
import type { Entries } from '../entries.ts';

/** What has to be lifted, opened or taken off: else the readings are of something else, or electronics die. */
export const ISOLATIONS = [
  'Source open and locked, or feed lifted',
  'Neutral-to-ground bond open',
  'Surge protective devices disconnected',
  'Meters and electronics disconnected',
  'Indicating lamps disconnected',
  'Tap-off devices off, or tap-offs taken out',
] as const;

export function Isolations({ entries }: { entries: Entries }) {
  return (
    <fieldset class="fillin">
      <legend>Isolated, lifted or taken off</legend>
      <div>
        {ISOLATIONS.map((isolation) => (
          <label class="tick" key={isolation}>
            <input type="checkbox" name="isolations" value={isolation} checked={entries.has('isolations', isolation)} />
            <span>{isolation}</span>
          </label>
        ))}
      </div>
      <TextField {...entries.text('otherIsolation')} label="Anything else" need="optional" />
    </fieldset>
  );
}
