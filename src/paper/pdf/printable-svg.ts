/** An SVG as the type of a PDF can print it: only lettering holds anything but plain ASCII, and what is spelled in its place may hold signs that XML keeps for itself. */
export function printableSvg(svg: string, say: (text: string) => string): string {
  return svg
    .normalize('NFC')
    .replaceAll(/[^ -~]+/g, (lettering) =>
      say(lettering).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;'),
    );
}
