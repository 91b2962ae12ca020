import { readFileSync } from 'node:fs';
import { brotliCompressSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { galleryPage } from './support/gallery-page.tsx';

const css = readFileSync('views/assets/app.css', 'utf8');

type Palette = Readonly<Record<string, string>>;

/** The custom properties of the block that follows `selector`, the `nth` time it stands in the sheet. */
function paletteOf(selector: string, nth: number): Palette {
  const blocks = [...css.matchAll(new RegExp(`(?:^|\\n)\\s*${selector} \\{([^}]*)\\}`, 'g'))];
  const entries = [...blocks[nth]![1]!.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)];
  return Object.fromEntries(entries.map(([, name, value]) => [name, value]));
}

const THEMES: readonly (readonly [string, Palette])[] = [
  ['light', paletteOf(':root', 0)],
  ['dark', paletteOf(':root', 1)],
  ['field', paletteOf('body\\.field', 0)],
  ['field, dark', paletteOf('body\\.field', 1)],
];

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high! + 0.05) / (low! + 0.05);
}

describe('the style sheet', () => {
  it('reckons contrast as WCAG does: black on white 21, mid grey #767676 on white 4.54', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2); // the well-known least grey for AA
  });

  it.each(THEMES)(
    '%s: every text reaches 4.5 to 1 on the ground and on a row under the pointer (WCAG 1.4.3)',
    (_, p) => {
      for (const text of ['ink', 'soft', 'press', 'stop'])
        for (const ground of ['paper', 'shade'])
          expect(contrast(p[text]!, p[ground]!), text).toBeGreaterThanOrEqual(4.5);
      expect(contrast(p['on-press']!, p.press!)).toBeGreaterThanOrEqual(4.5);
    },
  );

  it.each(THEMES)('%s: edges of controls and the focus ring reach 3 to 1 (WCAG 1.4.11)', (_, p) => {
    expect(contrast(p.edge!, p.paper!)).toBeGreaterThanOrEqual(3);
    expect(contrast(p.press!, p.paper!)).toBeGreaterThanOrEqual(3);
  });

  it.each(THEMES.filter(([name]) => name.startsWith('field')))('%s: text reaches 7 to 1', (_, p) => {
    for (const text of ['ink', 'soft', 'press', 'stop']) expect(contrast(p[text]!, p.paper!)).toBeGreaterThanOrEqual(7);
  });

  it('stays under 32 kB, some 7 kB compressed', () => {
    expect(Buffer.byteLength(css)).toBeLessThan(32_000);
  });

  it('asks for no font, picture or other file, and names every colour once, in the palettes', () => {
    expect(css).not.toMatch(/@import|@font-face|url\(/);
    const outside = css.replaceAll(/--[a-z-]+: #[0-9a-f]{6};/g, '');
    expect(outside.match(/#[0-9a-f]{3,8}\b(?!\s*\{)/g)).toBeNull();
  });

  it('a first page with everything it needs is under 60 kB compressed', () => {
    const files = [
      'views/assets/app.css',
      'views/assets/field.js',
      'views/assets/icon.svg',
      'node_modules/htmx.org/dist/htmx.min.js',
      'node_modules/htmx.org/dist/ext/hx-sse.min.js',
    ].map((file) => readFileSync(file));
    const page = Buffer.from(galleryPage('field', '/assets/0'));
    const total = [page, ...files].reduce((sum, file) => sum + brotliCompressSync(file).length, 0);
    expect(total).toBeLessThan(60_000);
  });
});
