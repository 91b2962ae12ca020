import { describe, expect, it } from 'vitest';
import { drawBackground } from '../../../src/paper/background/draw-background.ts';
import { CROSS_JPEG } from '../../support/cross-jpeg.ts';
import {
  type Cross,
  crossPdf,
  crossPng,
  inkOf,
  nonsensePng,
  onItsSide,
  statedJpeg,
  statedPng,
  withText,
} from '../../support/pictures.ts';

async function drawn(bytes: Uint8Array, page = 1) {
  const answer = await drawBackground(bytes, page);
  if (!answer.ok) throw new Error(answer.message);
  return answer;
}

/** Dark in the middle of the cross, and white beside it on all four slants. */
async function expectCross(picture: Uint8Array, { x, y }: Cross): Promise<void> {
  const ink = await inkOf(picture);
  expect(ink.at(x, y), `the cross at ${x}, ${y}`).toBeGreaterThan(100);
  for (const [dx, dy] of [
    [-8, -8],
    [8, -8],
    [-8, 8],
    [8, 8],
  ] as const)
    expect(ink.at(x + dx, y + dy), `beside the cross at ${x}, ${y}`).toBe(0);
}

describe('a page of a PDF', () => {
  // 72 points and 150 pixels to the inch: a cross 4 in from the left and 3 in from the top stands at pixel 600, 450.
  it('is drawn at 150 dots to the inch, every cross at its place', async () => {
    const inches = [
      [4, 3],
      [35, 1],
      [1, 23],
      [18, 12],
    ] as const;
    const page = await drawn(await crossPdf([inches.map(([x, y]) => ({ x: x * 72, y: y * 72 }))]));
    expect(page).toMatchObject({ kind: 'pdf', page: 1, pages: 1, width: 5400, height: 3600, dotsPerInch: 150 });
    for (const [x, y] of inches) await expectCross(page.picture, { x: x * 150, y: y * 150 });
  });

  it('is the page that was asked for', async () => {
    const file = await crossPdf([[{ x: 100, y: 100 }], [{ x: 288, y: 144 }], [{ x: 300, y: 300 }]], {
      size: [720, 360],
    });
    const page = await drawn(file, 2);
    expect(page).toMatchObject({ page: 2, pages: 3, width: 1500, height: 750 });
    await expectCross(page.picture, { x: 600, y: 300 });
  });

  it('that is very large is drawn at fewer dots to the inch, and says at how many', async () => {
    const page = await drawn(await crossPdf([[{ x: 2880, y: 720 }]], { size: [5760, 1440] })); // 80 by 20 in
    expect(page).toMatchObject({ width: 6000, height: 1500, dotsPerInch: 75 });
    await expectCross(page.picture, { x: 3000, y: 750 });
  });
});

describe('a picture', () => {
  it('keeps its pixels, and nothing else of the file', async () => {
    const file = withText(await crossPng(900, 600, [{ x: 300, y: 200 }]), 'taken by Secret Author');
    const page = await drawn(file);
    expect(page).toMatchObject({ kind: 'png', page: 1, pages: 1, width: 900, height: 600, dotsPerInch: null });
    await expectCross(page.picture, { x: 300, y: 200 });
    expect(Buffer.from(page.picture).includes('Secret Author')).toBe(false);
    expect(Buffer.from(page.paper).includes('Secret Author')).toBe(false);
  });

  it('may be a JPEG', async () => {
    const page = await drawn(CROSS_JPEG);
    expect(page).toMatchObject({ kind: 'jpeg', width: 304, height: 200 });
    expect((await inkOf(page.picture)).at(100, 60)).toBeGreaterThan(200);
  });

  it('of a telephone held upright stands upright: what was left and up is right and up', async () => {
    const page = await drawn(onItsSide(CROSS_JPEG));
    expect(page).toMatchObject({ width: 200, height: 304 });
    expect((await inkOf(page.picture)).at(200 - 60, 100)).toBeGreaterThan(200);
  });

  it('for paper is paler: black is left at 40 % of its ink, white is white', async () => {
    const { paper } = await drawn(await crossPng(900, 600, [{ x: 300, y: 200 }]));
    const ink = await inkOf(paper);
    expect(ink.at(300, 200)).toBeGreaterThan(90); // 40 % of 255 is 102, and JPEG wavers
    expect(ink.at(300, 200)).toBeLessThan(114);
    expect(ink.at(700, 500)).toBeLessThan(3);
    expect([...paper.subarray(0, 3)]).toEqual([0xff, 0xd8, 0xff]);
  });
});

describe('what cannot be a background is refused with what to do', () => {
  const SVG = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>';
  it.each<[string, () => Promise<Uint8Array> | Uint8Array, string, string]>([
    ['an empty file', () => Buffer.alloc(0), 'it has 0 bytes', 'Choose the file again'],
    ['a file of 21 MB', () => Buffer.alloc(21 * 1024 * 1024, 1), 'larger than 20 MB', '150 dots to the inch'],
    ['an SVG', () => Buffer.from(SVG), 'an SVG drawing', 'PNG, a JPEG or a PDF'],
    ['a page of HTML', () => Buffer.from('\n <!doctype html><p>%PDF-1.7'), 'a text in HTML', 'PNG, a JPEG or a PDF'],
    ['a GIF', () => Buffer.from('GIF89a......'), 'a GIF picture', 'PNG, a JPEG or a PDF'],
    ['a DWG', () => Buffer.from('AC1032......'), 'a DWG drawing', 'PNG, a JPEG or a PDF'],
    ['something else', () => Buffer.from('hello'), 'something else', 'PNG, a JPEG or a PDF'],
    ['a PNG of 3600 million pixels', () => statedPng(60_000, 60_000), '60000 × 60000 pixels', 'Save it smaller'],
    ['a PNG that is one long line', () => statedPng(30_000, 200), '12000 on a side', 'Save it smaller'],
    ['a JPEG of 65 535 a side', () => statedJpeg(65_535, 65_535), '65535 × 65535 pixels', 'Save it smaller'],
    ['a PNG of 20 pixels', () => statedPng(20, 20), 'too few to show a level', 'at least 100'],
    ['half a PNG', async () => (await crossPng(900, 600)).subarray(0, 700), 'damaged or cut off', 'save it anew'],
    ['a PNG with a bit turned', async () => turned(await crossPng(900, 600)), 'damaged or cut off', 'save it anew'],
    ['a PNG full of nonsense', () => nonsensePng(400, 400), 'one colour all over', 'save it anew'],
    ['a JPEG without a picture', () => statedJpeg(400, 400), 'cannot be read', 'save it anew'],
    ['a PNG of one colour', () => crossPng(400, 300, []), 'one colour all over', 'shows the level'],
    ['half a PDF', async () => (await crossPdf([[]])).subarray(0, 200), 'PDF cannot be read', 'save it anew'],
    ['the head of a PDF', () => Buffer.from('%PDF-1.7\nrubbish'), 'PDF cannot be read', 'save it anew'],
    ['a PDF behind a password', () => crossPdf([[]], { password: 'x' }), 'asks for a password', 'without a password'],
    ['a PDF with an empty page', () => crossPdf([[]]), 'Page 1 comes out blank', 'another page'],
    ['a stamp of a PDF', () => crossPdf([[{ x: 9, y: 9 }]], { size: [30, 18] }), '0.417 in by 0.25 in', 'another page'],
  ])('%s', async (_name, make, message, remedy) => {
    const answer = await drawBackground(await make(), 1);
    expect(answer).toMatchObject({ ok: false });
    if (answer.ok) return;
    expect(answer.message).toContain(message);
    expect(answer.remedy).toContain(remedy);
  });

  it('a page that the PDF does not have', async () => {
    const answer = await drawBackground(await crossPdf([[{ x: 9, y: 9 }], [{ x: 9, y: 9 }]]), 3);
    expect(answer).toMatchObject({ ok: false, path: 'page', message: 'The PDF has 2 pages, so there is no page 3.' });
  });

  it('a picture that takes too long, which is ended', async () => {
    const answer = await drawBackground(await crossPng(400, 300), 1, 0.001);
    expect(answer).toMatchObject({ ok: false, message: 'The PNG takes longer than 0.001 s to draw.' });
  });

  it('and the next one is drawn as if nothing had been', async () => {
    await drawBackground(nonsensePng(400, 400), 1);
    expect(await drawn(await crossPng(400, 300))).toMatchObject({ width: 400, height: 300 });
  });
});

function turned(png: Buffer): Buffer {
  const copy = Buffer.from(png);
  copy[60] = copy[60]! ^ 1;
  return copy;
}
