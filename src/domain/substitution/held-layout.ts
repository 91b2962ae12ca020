import { layoutRun } from '../layout/layout-run.ts';
import type { PlacedPiece, RunLayout } from '../layout/result.ts';
import type { FieldHold, HeldSection, Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import { damagedAt, isSamePieces, type SubstitutionSite, straightSections } from './site.ts';

/** A run that is kept to a substitution, and the layout that comes of it. */
export interface HeldRun {
  readonly run: Run;
  readonly layout: RunLayout;
}

/**
 * The run with these sections in place of the damaged one and every other piece as it was; null where the rules of today
 * would not let the others stay. Held are the new sections alone, so that the office may still change what is around them;
 * the whole run is held only where its other sections would otherwise be chosen anew.
 */
export function heldLayout(site: SubstitutionSite, lengths: readonly Length[]): HeldRun | null {
  const { run, context, layout } = site;
  const sections = sectionsFrom(damagedAt(site).from, lengths, context.type.stockLengths);
  const pieces = layout.pieces.flatMap((piece, index): PlacedPiece[] =>
    index === site.index ? sections.map((section) => ({ ...section, hand: null })) : [piece],
  );
  const supports = layout.supports.map(({ at }) => at);
  for (const held of [withSections(run.fieldHold, sections), straightSections(pieces)]) {
    const next = layoutRun({ ...run, fieldHold: { sections: held, supports } }, context);
    if (!next.ok || !isSamePieces(next.pieces, pieces)) continue;
    return {
      run: { ...run, fieldHold: { sections: held, supports: next.supports.map(({ at }) => at) } },
      layout: next,
    };
  }
  return null;
}

/** What is held already, with what stood in the place of these sections put out and them put in. */
export function withSections(hold: FieldHold | null, sections: readonly HeldSection[]): HeldSection[] {
  const [from, to] = [sections[0]?.from ?? 0, sections.at(-1)?.to ?? 0];
  const others = (hold?.sections ?? []).filter((section) => section.to <= from || section.from >= to);
  return [...others, ...sections].sort((a, b) => a.from - b.from);
}

function sectionsFrom(from: Length, lengths: readonly Length[], stock: readonly Length[]): HeldSection[] {
  let at = from;
  return lengths.map((length) => {
    const section: HeldSection = { from: at, to: at + length, kind: stock.includes(length) ? 'stock' : 'cut' };
    at += length;
    return section;
  });
}
