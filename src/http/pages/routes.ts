import type { ChangeFeed } from '../../actions/changes.ts';
import type { Context } from '../../actions/context.ts';
import type { App } from '../app-type.ts';
import { accounts } from './accounts.ts';
import { apiDocs } from './api-docs.ts';
import { audit } from './audit.ts';
import { bid } from './bid.ts';
import { closeoutPages } from './closeout.ts';
import { crews } from './crews.ts';
import { events } from './events.ts';
import { fieldRoutes } from './field/routes.ts';
import { hours } from './hours.ts';
import { jobFloors } from './job-floors.ts';
import { jobs } from './jobs.ts';
import { labourBook } from './labour-book.ts';
import { levelEdit } from './level-edit.ts';
import { lists } from './lists.ts';
import { me } from './me.ts';
import { members } from './members.ts';
import { newJob } from './new-job.ts';
import { run } from './run.ts';
import { runEdit } from './run-edit.ts';
import { settings } from './settings.ts';
import { signIn } from './sign-in.ts';
import { takeoff } from './takeoff.ts';
import { typeEdit } from './type-edit.ts';

/** The pages: one line a noun. */
export function pageRoutes(app: App, context: Context, feed: ChangeFeed): void {
  app.get('/', { schema: { hide: true } }, async (_request, reply) => reply.redirect('/jobs', 303));
  app.addHook('onSend', async (_request, reply) => {
    reply.header('server-timing', `app;dur=${reply.elapsedTime.toFixed(1)}`);
  });
  app.get('/healthz', { schema: { hide: true } }, async () => ({ status: 'ok' }));
  signIn(app, context);
  events(app, context, feed);
  jobs(app, context);
  newJob(app, context);
  jobFloors(app, context);
  run(app, context);
  runEdit(app, context);
  takeoff(app, context);
  hours(app, context);
  labourBook(app, context);
  bid(app, context);
  crews(app, context);
  lists(app, context);
  fieldRoutes(app, context);
  closeoutPages(app, context);
  settings(app, context);
  levelEdit(app, context);
  typeEdit(app, context);
  members(app, context);
  audit(app, context);
  accounts(app, context);
  me(app, context);
  apiDocs(app, context);
}
