import type { ProjectDocument } from './job-document.ts';

/** Figures of the heading, as against its words. */
const FIGURES = ['frequencyHz', 'voltageLL', 'voltageLN', 'voltageDropLimitPercent', 'unbalanceLimitPercent'] as const;
const WORDS = [
  'number',
  'name',
  'client',
  'site',
  'units',
  'currency',
  'timeZone',
  'codeBasis',
  'codeEdition',
] as const;

type Entered = Readonly<Record<string, string>>;

/** A job's heading as the texts of its form. */
export function writeProjectForm(project: ProjectDocument): Entered {
  const entries = [...WORDS, ...FIGURES].map((name) => [name, String(project[name] ?? '')]);
  return { ...Object.fromEntries(entries), industrial: project.industrial === true ? 'yes' : '' };
}

/**
 * What a person typed as a job's heading, for `parseJobDocument` to check: an empty field is left out, a figure that is none
 * stays text, so that the check names it.
 */
export function readProjectForm(
  entered: Entered,
  before: ProjectDocument | null = null,
): Readonly<Record<string, unknown>> {
  const words = WORDS.flatMap((name) => {
    const text = (entered[name] ?? '').trim();
    return text === '' ? [] : [[name, text]];
  });
  const figures = FIGURES.flatMap((name) => {
    const text = (entered[name] ?? '').trim();
    return text === '' ? [] : [[name, /^\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : text]];
  });
  const isTicked = entered.industrial === 'yes';
  const industrial = isTicked || before?.industrial === false ? [['industrial', isTicked]] : [];
  const ordering = before?.ordering === undefined ? [] : [['ordering', before.ordering]]; // has a page of its own
  return Object.fromEntries([...words, ...figures, ...industrial, ...ordering]);
}
