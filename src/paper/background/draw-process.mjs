// A process of its own that opens one picture from outside, draws it anew and ends. What is in such a file is nobody's word: a
// damaged one may bring the whole process down, so none is opened in the server's. It is told what to do by one message and
// answers with one: `{ ok: true, … }`, or `{ ok: false, why }`.
import { createRequire } from 'node:module';
import path from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';

const WHITE = '#ffffff';

process.once('message', async (asked) => {
  process.send(await draw(asked).catch((error) => ({ ok: false, why: reasonOf(error) })));
});
// The server hangs up when it has the answer, or no longer is: an answer is then never lost to the end of this process.
process.once('disconnect', () => process.exit(0));

async function draw({ kind, bytes, page, limits }) {
  const opened = kind === 'pdf' ? await openPage(bytes, page, limits) : await openPicture(bytes, limits);
  if (!opened.ok) return opened;
  const paper = reduced(opened.canvas, limits.longestOnPaper, limits.pale);
  if (isBlank(paper)) return { ok: false, why: 'blank' };
  const { canvas, png } = smallEnough(opened.canvas, limits);
  return {
    ok: true,
    page: opened.page,
    pages: opened.pages,
    width: canvas.width,
    height: canvas.height,
    dotsPerInch: opened.dotsPerInch === null ? null : (opened.dotsPerInch * canvas.width) / opened.canvas.width,
    picture: png,
    paper: paper.encodeSync('jpeg', 70),
  };
}

async function openPicture(bytes, limits) {
  const image = await loadImage(Buffer.from(bytes));
  const scale = Math.min(1, limits.longestKept / Math.max(image.width, image.height));
  const canvas = whiteCanvas(image.width * scale, image.height * scale);
  const pen = penOf(canvas);
  pen.drawImage(image, 0, 0, canvas.width, canvas.height);
  return { ok: true, canvas, page: 1, pages: 1, dotsPerInch: null };
}

async function openPage(bytes, number, limits) {
  // Asked for here, since it takes a while and pictures need none of it. No scripts, no forms, no fonts but those in its package.
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const folder = path.dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'));
  const file = await getDocument({
    data: new Uint8Array(bytes),
    verbosity: 0,
    isEvalSupported: false,
    enableXfa: false,
    disableFontFace: true,
    useSystemFonts: false,
    useWorkerFetch: false,
    stopAtErrors: false,
    maxImageSize: limits.mostPixels,
    canvasMaxAreaInBytes: limits.mostPixels * 4,
    standardFontDataUrl: `${folder}/standard_fonts/`,
    cMapUrl: `${folder}/cmaps/`,
    cMapPacked: true,
    wasmUrl: `${folder}/wasm/`,
    iccUrl: `${folder}/iccs/`,
  }).promise;
  if (number > file.numPages) return { ok: false, why: 'no-page', pages: file.numPages };
  const page = await file.getPage(number);
  const inPoints = page.getViewport({ scale: 1 });
  const [long, short] = [Math.max(inPoints.width, inPoints.height), Math.min(inPoints.width, inPoints.height)];
  const scale = Math.min(limits.pageDotsPerInch / 72, limits.longestKept / long);
  if (short * scale < limits.leastSide) return { ok: false, why: 'small-page', inches: [long / 72, short / 72] };
  const viewport = page.getViewport({ scale });
  const canvas = whiteCanvas(viewport.width, viewport.height);
  await page.render({ canvas, viewport, background: WHITE }).promise;
  return { ok: true, canvas, page: number, pages: file.numPages, dotsPerInch: 72 * scale };
}

/** A picture of much grain is drawn smaller until it can be kept. */
function smallEnough(canvas, limits) {
  const png = canvas.encodeSync('png');
  if (png.length <= limits.mostKeptBytes || Math.max(canvas.width, canvas.height) < 1000) return { canvas, png };
  return smallEnough(reduced(canvas, Math.max(canvas.width, canvas.height) * 0.7, 1), limits);
}

function reduced(from, longest, strength) {
  const scale = Math.min(1, longest / Math.max(from.width, from.height));
  const canvas = whiteCanvas(from.width * scale, from.height * scale);
  const pen = penOf(canvas);
  pen.globalAlpha = strength;
  pen.drawImage(from, 0, 0, canvas.width, canvas.height);
  return canvas;
}

function whiteCanvas(width, height) {
  const canvas = createCanvas(Math.max(1, Math.round(width)), Math.max(1, Math.round(height)));
  const pen = canvas.getContext('2d');
  pen.fillStyle = WHITE;
  pen.fillRect(0, 0, canvas.width, canvas.height);
  return canvas;
}

function penOf(canvas) {
  const pen = canvas.getContext('2d');
  pen.imageSmoothingEnabled = true;
  pen.imageSmoothingQuality = 'high';
  return pen;
}

function isBlank(canvas) {
  const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
  const [red, green, blue] = data;
  for (let at = 4; at < data.length; at += 4)
    if (data[at] !== red || data[at + 1] !== green || data[at + 2] !== blue) return false;
  return true;
}

function reasonOf(error) {
  return error?.name === 'PasswordException' ? 'locked' : 'broken';
}
