import type { FastifyReply, FastifyRequest } from 'fastify';
import { BackgroundPage } from '../../../../views/pages/plan/background.tsx';
import { backgroundEntryWord } from '../../../../views/words/background.ts';
import { findBackground } from '../../../actions/backgrounds.ts';
import { levelPlan } from '../../../actions/boards/level-plan.ts';
import type { Context } from '../../../actions/context.ts';
import { writeCalibrationForm } from '../../../document/background/calibration-form.ts';
import type { EntryFault } from '../../../document/form/entries.ts';
import { TAKEN_WORDS } from '../../../paper/background/limits.ts';
import { assetVersion } from '../../plugins/assets.ts';
import { formToken } from '../../plugins/sessions.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { levelParams } from '../drawings.ts';
import type { Entered, FormTrouble } from '../form.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';
import { lengthExample } from '../settings/fragment.ts';

/** A form that came back, and why. */
export interface BackgroundTried {
  readonly of: 'file' | 'page' | 'calibration' | 'removal';
  readonly fields: Entered;
  readonly faults?: readonly EntryFault[];
  readonly trouble?: FormTrouble;
}

/** The page of a level's picture; with what was typed and what is wrong where a form came back. */
export async function showBackground(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  tried: BackgroundTried | null,
): Promise<FastifyReply> {
  const { jobId, levelId } = levelParams.parse(request.params);
  const viewer = viewerOf(request);
  const [plan, background] = await Promise.all([
    levelPlan(context, viewer, jobId, levelId),
    findBackground(context, viewer, jobId, levelId),
  ]);
  const { heading, level } = plan;
  const { project, reached } = heading;
  const base = `/jobs/${jobId}/floors/${levelId}`;
  const faults = faultsOf(tried);
  const typed = tried?.of === 'calibration' ? tried.fields : null;
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: `Picture under the plan of ${level.name}`,
        part: 'floors',
        // What is wrong with an entry stands at the head of the page and beside the entry.
        trouble: tried?.trouble?.refusal.code === 'invalid' ? undefined : tried?.trouble,
        trail: [
          { word: 'Jobs', href: '/jobs' },
          { word: reached.number, href: `/jobs/${jobId}/floors` },
          { word: level.name, href: `/jobs/${jobId}/floors/${levelId}` },
          { word: 'Plan', href: `${base}/plan` },
        ],
      }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    BackgroundPage({
      base: `${base}/background`,
      planHref: `${base}/plan`,
      assets: `/assets/${assetVersion()}`,
      csrf: formToken(reply),
      submissionId: context.newId(),
      mayDesign: reached.may('design'),
      units: project.units,
      zone: project.timeZone ?? null,
      example: lengthExample(project.units),
      taken: TAKEN_WORDS,
      background,
      calibration: typed ?? writeCalibrationForm(background?.calibration ?? null, project.units),
      page: tried?.of === 'file' || tried?.of === 'page' ? (tried.fields.page ?? '') : '',
      summary: faults.map(({ field, said }) => ({
        field: tried?.of === 'page' ? 'f-other-page' : `f-${field.replace(/[^A-Za-z0-9_-]/g, '-')}`,
        label: backgroundEntryWord(field),
        message: said,
      })),
      faultOf: (form, name) => (form === tried?.of ? faults.find((fault) => fault.field === name)?.said : undefined),
      places: plan.runs.flatMap(({ id, path: way }) => {
        const [start, end] = [way[0], way.at(-1)];
        return start === undefined || end === undefined ? [] : [{ run: id, start, end }];
      }),
    }),
  );
}

function faultsOf(tried: BackgroundTried | null): readonly EntryFault[] {
  const refused = (tried?.trouble?.faults ?? []).map(({ path: field, message, remedy }) => ({
    field,
    said: `${message} ${remedy}`.trim(),
  }));
  return [...(tried?.faults ?? []), ...refused];
}
