import type { RunDocument } from '../../document/job-document.ts';
import type { FieldHold, HeldSection } from '../../domain/model.ts';
import type { TapMove } from '../../domain/substitution/substitute-way.ts';
import { toMm } from '../../domain/units/length.ts';

/** A run's document kept to a substitution, with the tap-offs that no longer fitted at their new distances. */
export function keptDocument(run: RunDocument, hold: FieldHold, moves: readonly TapMove[]): RunDocument {
  const to = new Map(moves.map((move) => [move.id, toMm(move.to)]));
  return {
    ...run,
    ...(run.taps === undefined
      ? {}
      : {
          taps: run.taps.map((tap) => {
            const atMm = to.get(tap.id);
            if (atMm === undefined) return tap;
            const { near: _near, ...rest } = tap;
            return { ...rest, atMm };
          }),
        }),
    fieldHold: { sections: hold.sections.map(sectionOf), supportsMm: hold.supports.map(toMm) },
  };
}

/** The office's own design of the run likewise: a tap-off that it has moved or taken out since the release is left to it. */
export function keptDraft(
  draft: RunDocument,
  released: RunDocument,
  hold: FieldHold,
  moves: readonly TapMove[],
): RunDocument {
  const places = new Map((released.taps ?? []).map((tap) => [tap.id, placeOf(tap)]));
  const standing = new Set(
    (draft.taps ?? []).filter((tap) => placeOf(tap) === places.get(tap.id)).map((tap) => tap.id),
  );
  return keptDocument(
    draft,
    hold,
    moves.filter(({ id }) => standing.has(id)),
  );
}

function placeOf({ atMm, near }: NonNullable<RunDocument['taps']>[number]): string {
  return near === undefined ? `${atMm}` : `${near.xMm} ${near.yMm}`;
}

function sectionOf({ from, to, kind }: HeldSection) {
  return { fromMm: toMm(from), toMm: toMm(to), kind };
}
