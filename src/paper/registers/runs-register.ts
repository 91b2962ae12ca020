import { feedWords } from '../../../views/drawings/strip/words.ts';
import { revisionWord } from '../closeout/run-sheet.ts';
import { standingWords } from '../closeout/test-sheet.ts';
import { mm, type Register } from './register.ts';

/** Each run with how much of it is there. */
export const runs: Register = {
  file: 'registers/runs.csv',
  columns: [
    'run',
    'level',
    'area',
    'feed side',
    'paired run',
    'busway type',
    'feed',
    'length mm',
    'length',
    'conductors on the',
    'revision',
    'released',
    'pieces',
    'joints',
    'joints accepted',
    'hangers',
    'hangers set',
    'tap-offs',
    'insulation',
  ],
  rowsOf: function* (dossier, say) {
    const { run, type, layout, pieces, joints, supports, taps, levelName } = dossier;
    yield [
      run.id,
      levelName,
      run.area,
      run.side,
      run.pairedRun,
      type.id,
      feedWords(run.feed),
      mm(layout.length),
      say.length(layout.length),
      run.conductorSide,
      revisionWord(dossier),
      dossier.releasedAt,
      pieces.length,
      joints.length,
      joints.filter((joint) => joint.state === 'accepted').length,
      supports.length,
      supports.filter((support) => support.state !== 'planned').length,
      taps.length,
      standingWords(dossier),
    ];
  },
};
