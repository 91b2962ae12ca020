import { inflateSync } from 'node:zlib';

/** Everything that can be read in a PDF, without the program that made it: each object's stream inflated, and the text of each page's lines. */
export function pdfStreams(pdf: Buffer): string[] {
  const found: string[] = [];
  const text = pdf.toString('latin1');
  for (const match of text.matchAll(/<<([\s\S]*?)>>\s*stream\r?\n/g)) {
    const length = Number(/\/Length (\d+)/.exec(match[1] ?? '')?.[1]);
    const from = match.index + match[0].length;
    const bytes = pdf.subarray(from, from + length);
    found.push((/FlateDecode/.test(match[1] ?? '') ? inflateSync(bytes) : bytes).toString('latin1'));
  }
  return found;
}

/** The lines of text that a PDF's pages show, in the order in which they were set; letters set in pairs are joined again. */
export function pdfLines(pdf: Buffer): string[] {
  return pdfStreams(pdf).flatMap((stream) =>
    [...stream.matchAll(/\[([^\]]*)\]\s*TJ|\(([^)]*)\)\s*Tj/g)].map((match) =>
      match[1] === undefined ? (match[2] ?? '') : hexText(match[1]),
    ),
  );
}

const CP1252 = new Map(
  '80 20AC,82 201A,83 0192,84 201E,85 2026,86 2020,87 2021,88 02C6,89 2030,8A 0160,8B 2039,8C 0152,8E 017D,91 2018,92 2019,93 201C,94 201D,95 2022,96 2013,97 2014,98 02DC,99 2122,9A 0161,9B 203A,9C 0153,9E 017E,9F 0178'
    .split(',')
    .map((pair) => pair.split(' ').map((code) => Number.parseInt(code, 16)) as [number, number]),
);

function hexText(operand: string): string {
  const bytes = [...operand.matchAll(/<([0-9a-f]*)>/gi)].map((match) => match[1]).join('');
  return [...Buffer.from(bytes, 'hex')].map((code) => String.fromCharCode(CP1252.get(code) ?? code)).join('');
}
