import type { LayoutContext } from '../layout/context-for.ts';
import { layoutRun } from '../layout/layout-run.ts';
import type { PlacedPiece, RunLayout } from '../layout/result.ts';
import type { HeldSection, Run } from '../model.ts';

/** A released run with one straight section that has to be made up of others. */
export interface SubstitutionSite {
  /** As released, with what it is kept to already. */
  readonly run: Run;
  readonly context: LayoutContext;
  readonly layout: RunLayout;
  /** Which piece of the layout. */
  readonly index: number;
  /** Tap-offs that hang already: they are not moved from here. */
  readonly hanging: ReadonlySet<string>;
}

/** The section that is to go. */
export function damagedAt({ layout, index }: Pick<SubstitutionSite, 'layout' | 'index'>): PlacedPiece {
  const piece = layout.pieces[index];
  if (piece === undefined) throw new Error(`the layout of ${layout.run} has no piece ${index}`);
  return piece;
}

/** The straight sections among these pieces. */
export function straightSections(pieces: readonly PlacedPiece[]): HeldSection[] {
  return pieces.flatMap(({ from, to, kind }) => (kind === 'stock' || kind === 'cut' ? [{ from, to, kind }] : []));
}

/**
 * The run kept to every section and hanger that it was released with, by the type and the rules as they are today: the same
 * as was released unless the office has changed what the run hangs on.
 */
export function layoutAsReleased({ run, context, layout }: SubstitutionSite): RunLayout {
  const sections = straightSections(layout.pieces);
  return layoutRun({ ...run, fieldHold: { sections, supports: layout.supports.map(({ at }) => at) } }, context);
}

export function isSamePieces(a: readonly PlacedPiece[], b: readonly PlacedPiece[]): boolean {
  const words = (pieces: readonly PlacedPiece[]) =>
    pieces.map(({ from, to, kind, hand }) => `${from} ${to} ${kind} ${hand}`).join();
  return words(a) === words(b);
}
