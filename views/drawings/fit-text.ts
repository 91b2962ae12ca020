import { textWidth } from './text-width.ts';

/** A line of lettering in the largest of the sizes from `size` down to `least` that fits; cut with three dots where none does. */
export function fitText(text: string, width: number, size: number, least = size): { text: string; size: number } {
  for (let tried = size; tried >= least; tried -= 0.5)
    if (textWidth(text, tried) <= width) return { text, size: tried };
  let kept = text;
  while (kept.length > 1 && textWidth(`${kept}…`, least) > width) kept = kept.slice(0, -1);
  return { text: `${kept.trimEnd()}…`, size: least };
}
