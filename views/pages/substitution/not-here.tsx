import { sayIn } from '../../../src/domain/layout/say.ts';
import { sumWords } from '../../words/substitution.ts';
import type { SubstitutionPageProps } from '../substitution.tsx';

/** Ways that cannot be chosen, and where no joint may stand. */
export function NotHere({ stopped, barred, zones, units }: SubstitutionPageProps) {
  const say = sayIn(units);
  if (stopped.length + barred.length + zones.length === 0) return null;
  return (
    <section>
      <h2>What cannot be built here</h2>
      {zones.length > 0 && (
        <p>
          No joint may stand:{' '}
          {zones.map((zone) => `from ${say(zone.from)} to ${say(zone.to)} (${zone.name})`).join('; ')}.
        </p>
      )}
      <ul>
        {barred.map(({ lengths, at, bar }) => (
          <li key={lengths.join()}>
            {sumWords(lengths, say)}: its joint at {say(at)} is kept away by {bar.name}.
          </li>
        ))}
        {stopped.map((way) => (
          <li key={way.lengths.join()}>
            {sumWords(way.lengths, say)}: {way.stops.map(({ message }) => message).join(' ')}
          </li>
        ))}
      </ul>
      {stopped.length > 0 && (
        <p>
          A tap-off that hangs already is not moved from here: the office moves it in the design, under its own rules.
        </p>
      )}
    </section>
  );
}
