import { z } from 'zod';
import type { Underlay, Window } from '../../../views/drawings/floor-plan.tsx';
import { extentOf, QUARTERS, quarterOf, widened } from '../../../views/drawings/plan/extent.ts';
import { LevelPlanPage, UNDER, type UnderName } from '../../../views/pages/plan/level-plan.tsx';
import { type LevelPlan, levelPlan } from '../../actions/boards/level-plan.ts';
import type { Context } from '../../actions/context.ts';
import { coveredBy } from '../../domain/background/similarity.ts';
import { METRE } from '../../domain/units/length.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { levelParams } from './drawings.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';

const query = z.object({ show: z.string().max(200).default('whole'), picture: z.enum(UNDER).catch('light') });
/** How much of the picture's ink lies under the plan. */
const STRENGTH: Readonly<Record<Exclude<UnderName, 'none'>, number>> = { light: 0.4, full: 1 };
/** Round one run so much of the level is shown, so that its neighbours can be seen. */
const SURROUNDINGS = 2 * METRE;

/** A level's plan: the whole, a quarter or one run, by plain links. */
export function levelPlanPage(app: App, context: Context): void {
  app.get(
    '/jobs/:jobId/floors/:levelId/plan',
    { schema: { hide: true, params: levelParams, querystring: query } },
    async (request, reply) => {
      const { jobId, levelId } = request.params;
      const plan = await levelPlan(context, viewerOf(request), jobId, levelId);
      const { heading, level } = plan;
      const { show, picture } = request.query;
      const part = partOf(plan, show);
      const path = `/jobs/${jobId}/floors/${levelId}/plan`;
      const underlay = picture === 'none' ? null : underlayOf(plan, path, STRENGTH[picture]);
      return sendPage(
        request,
        reply,
        jobSheet(context, heading, {
          title: `Plan of ${level.name}`,
          part: 'floors',
          trail: [
            { word: 'Jobs', href: '/jobs' },
            { word: heading.reached.number, href: `/jobs/${jobId}/floors` },
            { word: level.name, href: `/jobs/${jobId}/floors/${levelId}` },
          ],
        }),
        LevelPlanPage({
          path,
          pictureHref: `/jobs/${jobId}/floors/${levelId}/background`,
          levelName: level.name,
          pictured: pictured(plan),
          under: picture,
          ...(underlay === null ? {} : { underlay }),
          mayDesign: heading.reached.may('design'),
          units: heading.project.units,
          runs: plan.runs.map((run) => ({ ...run, href: `/jobs/${jobId}/runs/${run.runId}` })),
          ...part,
        }),
      );
    },
  );
}

function pictured({ background }: LevelPlan): 'not' | 'unplaced' | 'placed' {
  if (background === null) return 'not';
  return background.placed === null ? 'unplaced' : 'placed';
}

function underlayOf({ background }: LevelPlan, path: string, strength: number): Underlay | null {
  if (background === null || background.placed === null) return null;
  const { sha256, width, height, placed } = background;
  return { href: `${path.replace(/plan$/, 'background')}/${sha256}.png`, width, height, placed, strength };
}

/** What was asked for, as far as the level has it; else the whole. A level without runs shows its picture. */
function partOf({ runs, background }: LevelPlan, asked: string): { shown: string; window: Window | null } {
  const whole = extentOf(runs);
  const covered = background?.placed ? coveredBy(background.placed, background) : null;
  if (covered !== null && (asked === 'picture' || whole === null)) return { shown: 'picture', window: covered };
  const quarter = QUARTERS.find((one) => one === asked);
  if (whole !== null && quarter !== undefined)
    return { shown: quarter, window: quarterOf(widened(whole, METRE), quarter) };
  const run = runs.find(({ id }) => id === asked);
  const round = run === undefined ? null : extentOf([run]);
  if (round !== null) return { shown: asked, window: widened(round, SURROUNDINGS) };
  return { shown: 'whole', window: null };
}
