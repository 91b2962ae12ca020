/**
 * Breaks text into lines no wider than `width`: after a space, comma, hyphen or slash where there is one, and inside a word
 * that is wider than a whole line, so that no text ever leaves its column. Empty text is one empty line.
 *
 * Example, one unit a letter: `breakLines('torque log', 6, (t) => t.length) = ['torque', 'log']`.
 */
export function breakLines(text: string, width: number, measure: (text: string) => number): string[] {
  if (measure(text) <= width) return [text.trimEnd()];
  const lines: string[] = [];
  let line = '';
  for (const part of text.split(BREAKS)) {
    if (measure((line + part).trimEnd()) <= width) {
      line += part;
      continue;
    }
    if (line !== '') lines.push(line.trimEnd());
    line = part;
    while (measure(line.trimEnd()) > width) {
      const fits = longestFit(line, width, measure);
      lines.push(line.slice(0, fits));
      line = line.slice(fits);
    }
  }
  if (line.trimEnd() !== '') lines.push(line.trimEnd());
  return lines.length === 0 ? [''] : lines;
}

/** Not inside a figure or a date: 11'-6 1/16" and 2026-05-12 stay whole. */
const BREAKS = /(?<=[ ,;])|(?<=[-/])(?!\d)/;

/** How many characters fit; at least one, or a column narrower than a letter would never end. */
function longestFit(text: string, width: number, measure: (text: string) => number): number {
  let [low, high] = [1, text.length];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (measure(text.slice(0, middle)) <= width) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** One line, cut with three dots where it is too long: only for places that say elsewhere the whole. */
export function cutLine(text: string, width: number, measure: (text: string) => number): string {
  if (measure(text) <= width) return text;
  return `${text.slice(0, longestFit(text, width - measure('…'), measure)).trimEnd()}…`;
}
