/**
 * Width of drawing lettering in the units of `size`. Advance widths in thousandths of an em for the common sans metric
 * (Helvetica and its equals), from memory, rounded up; four per cent is added because the reader's own face may be wider.
 */
export function textWidth(text: string, size: number): number {
  let thousandths = 0;
  for (const character of text) thousandths += advance(character);
  return (thousandths * size * 1.04) / 1000;
}

function advance(character: string): number {
  if ("ijl'|".includes(character)) return 230;
  if (' .,:;!/\\ftI[]'.includes(character)) return 280;
  if ('"r-()`{}'.includes(character)) return 360;
  if ('ckJsvxyz'.includes(character)) return 510;
  if ('0123456789abdeghnopquL'.includes(character)) return 560;
  if ('FTZ+=<>~·–'.includes(character)) return 620;
  if ('ABEKPSVXY&w'.includes(character)) return 730;
  if ('CDHNRUGOQ'.includes(character)) return 780;
  return 1020;
}
