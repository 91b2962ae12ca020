import type { Length } from '../units/length.ts';
import type { RunGeometry } from './geometry.ts';
import type { PlacedFitting } from './place-fittings.ts';

/** A horizontal stretch that hangs from its own supports. */
export interface SupportStretch {
  /** Where supports may stand: from and to the faces of a riser's elbows, or the ends of the run. */
  readonly from: Length;
  readonly to: Length;
  /** What they carry: an elbow into a riser as far as its corner; the riser carries the rest. */
  readonly loadFrom: Length;
  readonly loadTo: Length;
}

/** The horizontal stretches of a run between its risers; a run without a riser is one stretch. */
export function supportStretches(
  geometry: RunGeometry,
  fittings: readonly PlacedFitting[],
  length: Length,
): readonly SupportStretch[] {
  const stretches: SupportStretch[] = [];
  const legs = geometry.legs;
  let from: Length | null = null;
  legs.forEach((leg, index) => {
    if (leg.vertical) return;
    from ??= leg.from;
    const next = legs[index + 1];
    if (next !== undefined && !next.vertical) return;
    const to = next === undefined ? length : leg.to;
    stretches.push(between(from, to, fittings));
    from = null;
  });
  return stretches.filter((stretch) => stretch.to > stretch.from);
}

function between(from: Length, to: Length, fittings: readonly PlacedFitting[]): SupportStretch {
  const before = fittings.find((fitting) => fitting.kind === 'elbow' && fitting.at === from);
  const after = fittings.find((fitting) => fitting.kind === 'elbow' && fitting.at === to);
  return { from: before?.to ?? from, to: after?.from ?? to, loadFrom: from, loadTo: to };
}
