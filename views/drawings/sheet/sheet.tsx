import type { ComponentChildren, JSX } from 'preact';
import { tenth } from '../scale.ts';
import { checkBar } from './layout.ts';
import { PAPERS } from './papers.ts';
import { type BlockProps, TitleBlock } from './title-block.tsx';

export interface SheetProps extends BlockProps {
  readonly legend: ComponentChildren;
  /** Beside the check bar: a bar in lengths of the building, where the drawing has one. */
  readonly bar?: ComponentChildren;
  readonly children: ComponentChildren;
}

/**
 * One sheet of paper as SVG: its width and height are in millimetres and its unit a hundredth of an inch, so that a drawing at
 * 1:100 measures true. Black on white, plain attributes: a PDF shows the same.
 */
export function Sheet(props: SheetProps): JSX.Element {
  const { layout, paper, head, sheet, sheets, children } = props;
  const { widthMm, heightMm } = PAPERS[paper];
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${layout.width} ${layout.height}`}
      width={`${widthMm}mm`}
      height={`${heightMm}mm`}
      font-family="Helvetica, Arial, sans-serif"
    >
      <title>{`${head.title}, sheet ${sheet} of ${sheets}`}</title>
      <rect x={0} y={0} width={layout.width} height={layout.height} fill="#ffffff" />
      {children}
      <Foot {...props} />
      <rect {...layout.border} fill="none" stroke="#000000" stroke-width={1.6} />
      <TitleBlock {...props} />
    </svg>
  );
}

function Foot({ layout, head, legend, bar }: SheetProps) {
  const { x, width } = layout.border;
  const check = checkBar(head.units);
  const left = x + 8;
  const y = layout.barY + 15;
  return (
    <>
      <path
        d={`M${x} ${layout.legendY}H${tenth(x + width)}M${x} ${layout.barY}H${tenth(x + width)}`}
        stroke="#000000"
        stroke-width={0.6}
        fill="none"
      />
      <g transform={`translate(${left} ${layout.legendY})`}>{legend}</g>
      <path
        d={`M${left} ${y - 6}V${y + 6}M${left} ${y}H${tenth(left + check.length)}M${tenth(left + check.length)} ${y - 6}V${y + 6}`}
        stroke="#000000"
        stroke-width={1.2}
        fill="none"
      />
      <text x={tenth(left + check.length + 10)} y={y + 3} font-size={8} fill="#000000">
        {`This bar is ${check.text} long when printed at 100 %.`}
      </text>
      {bar}
    </>
  );
}
