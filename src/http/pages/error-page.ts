import type { FastifyReply, FastifyRequest } from 'fastify';
import { ErrorPage } from '../../../views/pages/error-page.tsx';
import { renderFragment, renderPage } from '../../../views/shell/page.tsx';
import type { Problem } from '../problem.ts';
import { propsOf } from './page.ts';

/** A problem as a page; for htmx as the bare words, since it swaps every answer in. */
export function errorPage(request: FastifyRequest, reply: FastifyReply, problem: Problem): string {
  const content = ErrorPage({ problem });
  if (request.headers['hx-request'] === 'true' && request.headers['hx-request-type'] === 'partial')
    return renderFragment(content);
  return renderPage(
    propsOf(request, reply, {
      title: problem.title,
      status: problem.status,
      trail: [{ word: 'Jobs', href: '/jobs' }],
    }),
    content,
  );
}
