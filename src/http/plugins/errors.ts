import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Context } from '../../actions/context.ts';
import { Refused } from '../../actions/refused.ts';
import type { App } from '../app-type.ts';
import { errorPage } from '../pages/error-page.ts';
import { type Problem, problemOf } from '../problem.ts';

/** The one error handler and the one 404: problem details for scripts, a page for people. */
export function answerErrors(app: App, _context: Context): void {
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
    if (problem.status === 401 && request.method === 'GET')
      return reply.redirect(`/sign-in?next=${encodeURIComponent(request.url)}`, 303);
    return reply
      .code(problem.status)
      .type('text/html; charset=utf-8')
      .send(errorPage(request, reply, problem));
  }
  return reply.code(problem.status).type('application/problem+json').serializer(JSON.stringify).send(problem);
}

function wantsPage(request: FastifyRequest): boolean {
  return !request.url.startsWith('/api/');
}
