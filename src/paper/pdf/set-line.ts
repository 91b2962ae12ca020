/** How a letter is written before the one that follows it: its code in the type, and by how much the two are set closer. */
interface Setting {
  readonly hex: string;
  /** In thousandths of an em; 0 for most pairs. */
  readonly kern: number;
}

const kept = new WeakMap<PDFKit.PDFFont, Map<number, Setting>>();
/** After the last letter of a line. */
const NOTHING = 0xffff;

/**
 * Writes one line in the font, size and colour that are set, as `doc.text(…, { lineBreak: false })` does, to the byte. The
 * library asks for every letter's name, width and pair each time anew, and twice more to know where the line ends: half of
 * the time that a long table took.
 */
export function setLine(doc: PDFKit.PDFDocument, text: string, x: number, y: number): void {
  const { page, _font: font, _fontSize: size } = doc;
  page.fonts[font.id] ??= font.ref();
  const base = page.height - y - (font.ascender / 1000) * size;
  doc.addContent(
    `q\n1 0 0 -1 0 ${number(page.height)} cm\nBT\n1 0 0 1 ${number(x)} ${number(base)} Tm\n` +
      `/${font.id} ${number(size)} Tf\n[${segments(font, text)}] TJ\nET\nQ`,
  );
}

/** `<4156> 74 <4f> 0`: letters in a row, and how much nearer the next one comes. */
function segments(font: PDFKit.PDFFont, text: string): string {
  const settings = settingsOf(font);
  let [line, letters] = ['', ''];
  for (let index = 0; index < text.length; index++) {
    const isLast = index === text.length - 1;
    const { hex, kern } = settingOf(
      font,
      settings,
      text.charCodeAt(index),
      isLast ? NOTHING : text.charCodeAt(index + 1),
    );
    letters += hex;
    if (kern === 0 && !isLast) continue;
    line += `${line === '' ? '' : ' '}<${letters}> ${number(-kern)}`;
    letters = '';
  }
  return line;
}

function settingsOf(font: PDFKit.PDFFont): Map<number, Setting> {
  const known = kept.get(font);
  if (known !== undefined) return known;
  const settings = new Map<number, Setting>();
  kept.set(font, settings);
  return settings;
}

function settingOf(font: PDFKit.PDFFont, settings: Map<number, Setting>, left: number, right: number): Setting {
  const key = left * 0x10000 + right;
  const known = settings.get(key);
  if (known !== undefined) return known;
  const [codes, places] = font.encode(String.fromCharCode(...(right === NOTHING ? [left] : [left, right])));
  const [hex, place] = [codes[0], places[0]];
  if (hex === undefined || place === undefined) throw new Error('a letter that the type does not write');
  const setting = { hex, kern: place.xAdvance - place.advanceWidth };
  settings.set(key, setting);
  return setting;
}

/** As the library writes numbers. */
function number(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
