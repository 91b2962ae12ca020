import type { FastifyReply, FastifyRequest } from 'fastify';
import { Refused } from '../../actions/refused.ts';
import type { App } from '../app-type.ts';
import { errorPage } from '../pages/error-page.ts';
import { type Problem, problemOf } from '../problem.ts';

/** The one error handler and the one 404: problem details for scripts, a page for people. */
export function answerErrors(app: App): void {
  app.setErrorHandler((error, request, reply) => {
    const problem = problemOf(error, request.id, request.url);
    if (problem.status >= 500) request.log.error({ err: error }, 'fault');
    return answer(request, reply, problem);
  });
  app.setNotFoundHandler((request, reply) =>
    answer(request, reply, problemOf(new Refused({ code: 'not-found', what: 'page' }), request.id, request.url)),
  );
}

function answer(request: FastifyRequest, reply: FastifyReply, problem: Problem): FastifyReply {
  if (wantsPage(request)) {
    if (problem.status === 401 && isRefresh(request)) return reply.code(401).header('hx-reswap', 'none').send('');
    if (problem.status === 401 && request.method === 'GET')
      return reply.redirect(`/sign-in?next=${encodeURIComponent(request.url)}`, 303);
    return reply
      .code(problem.status)
      .type('text/html; charset=utf-8')
      .send(errorPage(request, reply, problem));
  }
  return reply.code(problem.status).type('application/problem+json').serializer(JSON.stringify).send(problem);
}

/** A part of a page fetching itself again after the session ran out: the page stays, with what is typed in it. */
function isRefresh(request: FastifyRequest): boolean {
  return request.headers['hx-request'] === 'true' && request.headers['hx-history-restore-request'] === undefined;
}

function wantsPage(request: FastifyRequest): boolean {
  return !request.url.startsWith('/api/');
}
