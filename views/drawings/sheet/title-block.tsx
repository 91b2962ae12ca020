import type { JSX } from 'preact';
import { fitText } from '../fit-text.ts';
import { tenth } from '../scale.ts';
import { CAUTION, type SheetHead, standingWords, UNITS_WORD } from './head.ts';
import { BLOCK, type SheetLayout } from './layout.ts';
import { PAPERS, type PaperName } from './papers.ts';
import { scaleWord } from './scales.ts';

export interface BlockProps {
  readonly head: SheetHead;
  readonly layout: SheetLayout;
  readonly paper: PaperName;
  readonly ratio: number;
  readonly sheet: number;
  readonly sheets: number;
}

const CELLS = 46;
/** The title block at the foot of a sheet: job, drawing, revision, scale, date, sheet, and a line of cautions under them. */
export function TitleBlock({ head, layout, paper, ratio, sheet, sheets }: BlockProps): JSX.Element {
  const { x, width } = layout.border;
  const top = layout.blockY;
  const scale = scaleWord(ratio, head.units);
  const under =
    scale === `1:${ratio}` ? `lengths in ${UNITS_WORD[head.units]}` : `1:${ratio}, ${UNITS_WORD[head.units]}`;
  const cells = [
    { label: 'JOB', lines: [head.jobNumber, head.jobName], share: 0.27 },
    { label: 'DRAWING', lines: [head.title, head.under], share: 0.22 },
    { label: 'REVISION', lines: standingWords(head.standing), share: 0.18 },
    { label: 'SCALE', lines: [scale, under], share: 0.14 },
    { label: 'DATE', lines: [head.date], share: 0.09 },
    { label: 'SHEET', lines: [`${sheet} of ${sheets}`, PAPERS[paper].word], share: 0.1 },
  ];
  const lefts = cells.map((_, index) => x + width * cells.slice(0, index).reduce((sum, cell) => sum + cell.share, 0));
  const rules = lefts.slice(1).map((left) => `M${tenth(left)} ${top}V${top + CELLS}`);
  const caution = fitText([CAUTION, ...head.notes].join(' '), width - 12, 8, 5.5);
  return (
    <g>
      <path
        d={`M${x} ${top}H${tenth(x + width)}M${x} ${top + CELLS}H${tenth(x + width)}${rules.join('')}`}
        stroke="#000000"
        stroke-width={1}
        fill="none"
      />
      {cells.map((cell, index) => (
        <Cell key={cell.label} {...cell} x={lefts[index]! + 6} y={top} width={cell.share * width - 12} />
      ))}
      <text x={x + 6} y={top + CELLS + (BLOCK - CELLS) / 2 + 3} font-size={caution.size} fill="#000000">
        {caution.text}
      </text>
    </g>
  );
}

interface CellProps {
  readonly label: string;
  readonly lines: readonly string[];
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

function Cell({ label, lines, x, y, width }: CellProps) {
  const [first = '', second = ''] = lines;
  const strong = fitText(first, width * 0.95, 12, 7.5);
  const plain = fitText(second, width, 8.5, 6);
  return (
    <>
      <text x={tenth(x)} y={y + 10} font-size={6.5} fill="#000000">
        {label}
      </text>
      <text x={tenth(x)} y={y + 25} font-size={strong.size} font-weight="bold" fill="#000000">
        {strong.text}
      </text>
      <text x={tenth(x)} y={y + 38} font-size={plain.size} fill="#000000">
        {plain.text}
      </text>
    </>
  );
}
