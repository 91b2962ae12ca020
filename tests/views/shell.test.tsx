import { describe, expect, it } from 'vitest';
import { JOB_PARTS } from '../../views/shell/job-parts.ts';
import { type PageProps, renderFragment, renderPage } from '../../views/shell/page.tsx';

const props: PageProps = {
  title: 'Takeoff',
  viewer: { name: 'R. Ibe', roleWord: 'office' },
  job: { id: 'pq', number: 'T-104', name: 'Plover Quay' },
  part: 'takeoff',
  trail: [{ word: 'Jobs', href: '/jobs' }],
  theme: 'office',
  csrf: 'c"1',
  assets: '/assets/0a1b',
  revision: 'draft',
  asOf: new Date('2026-05-12T20:40:00Z'),
  timeZone: 'America/Chicago',
};
const page = (more: Partial<PageProps> = {}) => renderPage({ ...props, ...more }, <p>content</p>);

describe('a page', () => {
  it('begins with its doctype, language and a link past the head', () => {
    expect(page()).toMatch(/^<!doctype html><html lang="en"><head><meta charset="utf-8"\/>/);
    expect(page()).toContain('<a class="skip" href="#sheet">');
    expect(page()).toContain('<main id="sheet" tabindex="-1">');
    expect(page().match(/<h1>/g)).toHaveLength(1);
  });

  it('keeps to the content policy: no inline script or style, no handler attributes', () => {
    const html = page({ liveUrl: '/jobs/pq/events', theme: 'field', flash: { kind: 'done', text: 'Saved.' } });
    expect(html).not.toMatch(/<script>|<style|\sstyle=|\son[a-z]+=|hx-on/);
  });

  it('hands the form token to htmx and to field.js, escaped', () => {
    expect(page()).toContain('hx-headers:inherited="{&quot;x-csrf-token&quot;:&quot;c\\&quot;1&quot;}"');
    expect(page()).toContain('<meta name="csrf-token" content="c&quot;1"/>');
  });

  it('shows all parts of the job, the current one marked; none without a job', () => {
    for (const { part, word } of JOB_PARTS)
      expect(page()).toContain(
        `href="/jobs/pq/${part}"`.concat(part === 'takeoff' ? ' aria-current="page"' : '', `>${word}<`),
      );
    expect(page({ job: undefined })).not.toContain('Parts of the job');
  });

  it('carries a title block: job, sheet, revision and the moment in the zone of the job', () => {
    const block = page().slice(page().indexOf('<footer'));
    expect(block).toContain('T-104  Plover Quay');
    expect(block).toContain('<dd>Takeoff</dd>');
    expect(block).toContain('<dd>draft</dd>');
    expect(block).toContain('<time datetime="2026-05-12T20:40:00.000Z">12 May 2026, 15:40 CDT</time>');
  });

  it('loads only what it needs', () => {
    expect(page()).not.toMatch(/field\.js|hx-sse/);
    expect(page({ theme: 'field' })).toContain('src="/assets/0a1b/field.js"');
    expect(page({ liveUrl: '/jobs/pq/events' })).toContain('hx-sse:connect="/jobs/pq/events"');
  });

  it('htmx and its listener run before the page is parsed to its end, so that htmx never starts without it', () => {
    const html = page({ liveUrl: '/jobs/pq/events' });
    const scripts = [...html.matchAll(/<script[^>]*>/g)].map(([tag]) => tag);
    expect(scripts.map((tag) => /src="[^"]*\/([^"/]*)"/.exec(tag)?.[1])).toEqual(['htmx.min.js', 'hx-sse.min.js']);
    for (const tag of scripts) expect(tag).not.toMatch(/defer|async|module/);
    expect(html.indexOf('<script')).toBeGreaterThan(html.indexOf('id="live"'));
  });

  it('keeps names as text, wherever they stand', () => {
    const evil = '"><script>alert(1)</script>';
    const html = page({
      title: evil,
      viewer: { name: evil, roleWord: evil },
      job: { id: evil, number: evil, name: evil },
      trail: [{ word: evil, href: `/jobs/${evil}` }],
      flash: { kind: 'stop', text: evil },
      lede: evil,
      revision: evil,
    });
    expect(html).not.toContain('<script>alert');
    expect(html).not.toContain('"><script');
  });

  it('a fragment is the bare part', () => {
    expect(renderFragment(<p>3 &lt; 4 {'<b>'}</p>)).toBe('<p>3 &lt; 4 &lt;b></p>');
  });
});
