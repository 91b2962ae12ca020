import type { FastifyReply, FastifyRequest } from 'fastify';
import type { ComponentChildren } from 'preact';
import { type PageProps, renderPage } from '../../../views/shell/page.tsx';
import { roleWord } from '../../../views/words/roles.ts';
import type { Reach } from '../../actions/reach.ts';
import { assetVersion } from '../plugins/assets.ts';
import { formToken } from '../plugins/sessions.ts';

/** What a page says of itself; who is reading, tokens and assets are filled in here. */
export interface Sheet
  extends Partial<Pick<PageProps, 'part' | 'theme' | 'flash' | 'tools' | 'lede' | 'revision' | 'timeZone' | 'trail'>> {
  readonly title: string;
  readonly asOf?: Date;
  /** The job the page belongs to, as this viewer reaches it. */
  readonly reached?: Reach;
  readonly status?: number;
}

/** Sends a whole page. */
export function sendPage(
  request: FastifyRequest,
  reply: FastifyReply,
  sheet: Sheet,
  content: ComponentChildren,
): FastifyReply {
  return reply
    .code(sheet.status ?? 200)
    .type('text/html; charset=utf-8')
    .send(renderPage(propsOf(request, reply, sheet), content));
}

export function propsOf(request: FastifyRequest, reply: FastifyReply, sheet: Sheet): PageProps {
  const { reached, status: _status, ...own } = sheet;
  const { viewer } = request;
  return {
    ...own,
    theme: sheet.theme ?? 'office',
    trail: sheet.trail ?? trailOf(reached),
    viewer:
      viewer === null ? null : { name: viewer.name, roleWord: roleWord(reached?.role ?? null, viewer.administrator) },
    csrf: formToken(reply),
    assets: `/assets/${assetVersion()}`,
    flash: sheet.flash ?? flashOf(request),
    ...(reached === undefined
      ? {}
      : {
          job: { id: reached.projectId, number: reached.number, name: reached.name },
          liveUrl: `/jobs/${reached.projectId}/events?asOf=${sheet.asOf?.toISOString() ?? ''}`,
        }),
  };
}

/** After a post: back to a page by GET, with one line of what was done. */
export function goTo(reply: FastifyReply, path: string, done?: string): FastifyReply {
  const [before, hash] = path.split('#', 2);
  const at =
    done === undefined ? before : `${before}${before?.includes('?') ? '&' : '?'}done=${encodeURIComponent(done)}`;
  return reply.redirect(`${at}${hash === undefined ? '' : `#${hash}`}`, 303);
}

/** From the address itself: a route's own schema keeps only the choices that it knows. */
function flashOf(request: FastifyRequest): PageProps['flash'] {
  const done = new URL(request.url, 'http://localhost').searchParams.get('done');
  return done === null || done === '' ? undefined : { kind: 'done', text: done.slice(0, 200) };
}

function trailOf(reached: Reach | undefined): PageProps['trail'] {
  const jobs = { word: 'Jobs', href: '/jobs' };
  return reached === undefined ? [jobs] : [jobs, { word: reached.number, href: `/jobs/${reached.projectId}/floors` }];
}
