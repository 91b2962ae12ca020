import { CopiesPage } from '../../../../views/pages/several/copies.tsx';
import { makeCopies, previewCopies, type SeveralPreview } from '../../../actions/run-copies.ts';
import { levelsOf } from '../../../actions/several/level-runs.ts';
import { readCopyForm } from '../../../document/several/read-copy-form.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { madeProps, saidMade } from './made-props.ts';
import type { Round } from './round.ts';

/** Copies of runs to further rows and other levels. */
export const COPIES: Round<ReturnType<typeof readCopyForm>['asked'], SeveralPreview> = {
  name: 'copies',
  fresh: { rows: '', taps: 'yes', branches: 'yes' },
  title: (runs) => (runs.length === 1 ? `Copy run ${runs[0]}` : 'Copy runs'),
  words: {
    runs: 'Runs',
    rows: 'Further rows',
    'pitch.xMm': 'Pitch, east',
    'pitch.yMm': 'Pitch, north',
    levels: 'Other levels',
    step: 'Numbers count on by',
    names: 'Naming',
    supply: 'Supply of the copies',
  },
  read: ({ fields, runs, levels }, { project }) => readCopyForm(fields, runs, levels, project),
  preview: previewCopies,
  write: async (...asked) => saidMade(await makeCopies(...asked)),
  page: async (shown) => {
    const { context, request, jobId, job, typed, form } = shown;
    const own = await levelsOf(context, viewerOf(request), jobId, typed.runs);
    return CopiesPage({
      ...form,
      levels: job.levels
        .filter((level) => !own.has(level.id))
        .map((level) => ({ value: level.id, word: `${level.id}, ${level.name}` })),
      chosenLevels: typed.levels,
      example: job.project.units === 'ft-in' ? '8 ft or 2438 mm' : '2400 or 2.4 m',
      preview: await madeProps(shown),
    });
  },
};
