import { canonicalJson } from '../canonical-json.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Run, Tap } from '../model.ts';
import type { RevisionDifference, TapAt } from './difference.ts';

interface WithTaps {
  readonly run: Pick<Run, 'taps'>;
  readonly layout: Pick<RunLayout, 'taps'>;
}

/**
 * Tap-offs of two revisions, the same while they keep their id. Where one stands is the layout's word, so that a plan position
 * whose route moved counts as moved. Distances in 1/80 mm.
 *
 * @example compareTaps(released, draft).moved.map(({ after }) => after.tap.id)
 */
export function compareTaps(before: WithTaps, after: WithTaps): RevisionDifference['taps'] {
  const old = placed(before);
  const now = placed(after);
  const kept = [...now.values()].flatMap((tap) => {
    const was = old.get(tap.tap.id);
    return was === undefined ? [] : [{ before: was, after: tap }];
  });
  const moved = kept.filter((pair) => pair.before.at !== pair.after.at);
  const changed = kept.filter((pair) => said(pair.before.tap) !== said(pair.after.tap));
  const other = new Set([...moved, ...changed].map(({ after: tap }) => tap.tap.id));
  return {
    added: [...now.values()].filter(({ tap }) => !old.has(tap.id)),
    removed: [...old.values()].filter(({ tap }) => !now.has(tap.id)),
    moved,
    changed,
    same: kept.length - other.size,
  };
}

function placed({ run, layout }: WithTaps): ReadonlyMap<string, TapAt> {
  const taps = new Map(run.taps.map((tap) => [tap.id, tap]));
  return new Map(
    layout.taps.flatMap(({ id, at }): [string, TapAt][] => {
      const tap = taps.get(id);
      return tap === undefined ? [] : [[id, { tap, at }]];
    }),
  );
}

function said({ place: _place, ...rest }: Tap): string {
  return canonicalJson(rest);
}
