/** Names that one widespread system keeps for its devices. */
const RESERVED = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;

/**
 * File names for the runs' drawings, one after another: the run's label where it can be a file name everywhere, else a plain
 * form of it with its place in the book, so that no label leaves its folder and no two share a file.
 *
 * Example: `F1-R01-A` gives `drawings/F1-R01-A.svg`; `../x` as the seventh run gives `drawings/_x~7.svg`.
 */
export function drawingNamer(): (run: string) => string {
  const taken = new Set<string>();
  let place = 0;
  return (run) => {
    place += 1;
    const plain = run
      .replaceAll(/[^A-Za-z0-9._-]+/g, '_')
      .replace(/^[._]+/, '_')
      .replace(/\.+$/, '_');
    const clear = plain === run && !RESERVED.test(run) && !taken.has(run.toLowerCase());
    const name = clear ? run : `${plain}~${place}`;
    taken.add(name.toLowerCase());
    return `drawings/${name}.svg`;
  };
}
