import type { ComponentChildren, JSX } from 'preact';
import { render } from 'preact-render-to-string';
import { Notice } from '../components/notice.tsx';
import { Head } from './head.tsx';
import type { PageProps } from './props.ts';
import { TitleBlock } from './title-block.tsx';

export type { Crumb, Flash, PageProps, Theme } from './props.ts';

const HTMX = '/vendor/htmx-4.0.1';
const MORPH_LEAVES = JSON.stringify({ morphIgnore: ['data-htmx-powered', 'open'] });

/** A whole page as text. `content` stands under the heading, which the page writes itself from `title`. */
export function renderPage(props: PageProps, content: ComponentChildren): string {
  return `<!doctype html>${render(<Page {...props}>{content}</Page>)}`;
}

/** A part of a page, for htmx to swap in. */
export function renderFragment(node: JSX.Element): string {
  return render(node);
}

function Page(props: PageProps & { readonly children: ComponentChildren }): JSX.Element {
  const { title, viewer, job, theme, liveUrl, csrf, assets } = props;
  const isField = theme === 'field';
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <title>{job ? `${title} · ${job.number} · Job Book` : `${title} · Job Book`}</title>
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="csrf-token" content={csrf} />
        {viewer && <meta name="viewer" content={viewer.name} />}
        {/* What somebody unfolded stays unfolded when a live part fetches itself again. */}
        <meta name="htmx-config" content={MORPH_LEAVES} />
        <link rel="icon" href={`${assets}/icon.svg`} type="image/svg+xml" />
        <link rel="stylesheet" href={`${assets}/app.css`} />
        {isField && <script src={`${assets}/field.js`} defer />}
      </head>
      <body class={theme} hx-headers:inherited={JSON.stringify({ 'x-csrf-token': csrf })}>
        <a class="skip" href="#sheet">
          Skip to the sheet
        </a>
        <Head {...props} />
        <main id="sheet" tabIndex={-1}>
          {props.flash && <Notice {...props.flash} />}
          <div class="opening">
            <div>
              <h1>{title}</h1>
              {props.lede && <p class="soft">{props.lede}</p>}
            </div>
            {props.tools && <div class="row">{props.tools}</div>}
          </div>
          {props.children}
        </main>
        {isField && <section id="unsent" class="unsent" aria-label="Not sent yet" aria-live="polite" hidden />}
        <TitleBlock {...props} />
        {liveUrl && <div id="live" hx-sse:connect={liveUrl} hx-swap="none" hidden />}
        {/* Not deferred: a deferred htmx starts in a task of its own, now and then before its extension is there to listen. */}
        <script src={`${HTMX}/htmx.min.js`} />
        {liveUrl && <script src={`${HTMX}/ext/hx-sse.min.js`} />}
      </body>
    </html>
  );
}
