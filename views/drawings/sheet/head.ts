import type { UnitSystem } from '../../../src/domain/model.ts';

/** What the title block of every sheet of one drawing says. */
export interface SheetHead {
  readonly jobNumber: string;
  readonly jobName: string;
  /** "Strip of run F1-R01-A". */
  readonly title: string;
  /** Under the title: the level, or the busway type. */
  readonly under: string;
  readonly standing: Standing;
  /** As handed in, "2026-05-12": nothing here reads a clock. */
  readonly date: string;
  readonly units: UnitSystem;
  /** What the reader has to know of this drawing alone. */
  readonly notes: readonly string[];
}

/** Whether the drawing may be built from: a released revision, or a draft (after a revision, where there was one). */
export type Standing =
  | { readonly kind: 'released'; readonly revision: number }
  | { readonly kind: 'draft'; readonly after: number | null }
  /** A level: so many of its runs are released as drawn. */
  | { readonly kind: 'level'; readonly released: number; readonly runs: number };

export function standingWords(standing: Standing): readonly [string, string] {
  const bar = 'not for construction until released';
  switch (standing.kind) {
    case 'released':
      return [`revision ${standing.revision}`, 'as released to the floor'];
    case 'draft':
      return [standing.after === null ? 'draft' : `draft after rev. ${standing.after}`, bar];
    case 'level':
      if (standing.runs > 0 && standing.released === standing.runs) return ['released', 'every run as released'];
      return [`${standing.released} of ${standing.runs} runs released`, bar];
  }
}

export const UNITS_WORD: Readonly<Record<UnitSystem, string>> = { 'ft-in': 'feet and inches', metric: 'metres' };

export const CAUTION =
  'The maker’s sheet, the local code and the licensed engineer decide. Nothing on this drawing says that anything may be energised or touched.';

/** What the title block says, as lines for a drawing that has no sheet. */
export function headLines({ jobNumber, jobName, title, under, standing, date, notes }: SheetHead): string[] {
  return [
    `${jobNumber} ${jobName}`,
    `${title}, ${under}`,
    `${standingWords(standing).join(', ')}; ${date}`,
    CAUTION,
    ...notes,
  ];
}
