import { PartnersPage } from '../../../../views/pages/several/partners.tsx';
import type { SeveralPreview } from '../../../actions/run-copies.ts';
import { makePartners, previewPartners } from '../../../actions/run-partners.ts';
import { readPartnerForm } from '../../../document/several/read-partner-form.ts';
import { madeProps, saidMade } from './made-props.ts';
import type { Round } from './round.ts';

/** The partners of runs on the other feed side. */
export const PARTNERS: Round<ReturnType<typeof readPartnerForm>['asked'], SeveralPreview> = {
  name: 'partners',
  fresh: { way: 'axis-left', taps: 'yes', pairTaps: 'yes', branches: 'yes' },
  title: (runs) => (runs.length === 1 ? `Partner of run ${runs[0]}` : 'Partners of runs'),
  words: {
    runs: 'Runs',
    'way.awayMm': 'From the run to the axis',
    'way.atMm': 'The line stands at',
    'way.xMm': 'Beside it, east',
    'way.yMm': 'Beside it, north',
    names: 'Naming',
    supply: 'Supply of the partners',
  },
  read: ({ fields, runs }, { project }) => readPartnerForm(fields, runs, project),
  preview: previewPartners,
  write: async (...asked) => saidMade(await makePartners(...asked)),
  page: async (shown) =>
    PartnersPage({
      ...shown.form,
      example: shown.job.project.units === 'ft-in' ? '1 ft or 300 mm' : '300 or 0.3 m',
      preview: await madeProps(shown),
    }),
};
