import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import type { RevisionDifference } from '../../../src/domain/revision/difference.ts';
import { type ChangeWords, changeWords, reopenedWords } from '../../words/revision-changes.ts';

/** What one revision does to the one before, in sentences with counts that open to lists. */
export function RevisionChanges(props: {
  readonly difference: RevisionDifference;
  readonly units: UnitSystem;
}): JSX.Element {
  const { difference, units } = props;
  const changes = changeWords(difference, units);
  const reopened = reopenedWords(difference, units);
  if (changes.length + reopened.length === 0)
    return <p>No piece, joint, hanger or tap-off differs, and no work is taken up again.</p>;
  return (
    <div class="columns">
      <Sentences title="What differs" lines={changes} none="No piece, joint or tap-off differs." />
      <Sentences title="What it takes up again" lines={reopened} none="Nothing: what was done stays done." />
    </div>
  );
}

function Sentences({ title, lines, none }: { title: string; lines: readonly ChangeWords[]; none: string }) {
  return (
    <div class="stack">
      <h4>{title}</h4>
      {lines.length === 0 && <p class="soft">{none}</p>}
      {lines.map(({ text, things }) =>
        things.length === 0 ? (
          <p key={text}>{text}.</p>
        ) : (
          <details key={text}>
            <summary>{text}</summary>
            <ul>
              {things.map((thing) => (
                <li key={thing}>{thing}</li>
              ))}
            </ul>
          </details>
        ),
      )}
    </div>
  );
}
