import { activityWord } from '../../../../views/words/activities.ts';
import { noDateWords, orderLineWords, purposeWord } from '../../../../views/words/order-items.ts';
import type { OrderBoard } from '../../../actions/boards/order-board.ts';
import { formatLength } from '../../../domain/units/format-length.ts';
import { type Length, toMm } from '../../../domain/units/length.ts';
import { shownQuantity } from '../../../domain/units/quantities.ts';
import type { ListedRow, SpareRow, ToolRow } from '../../../paper/workbooks/order-sheets.ts';
import { sayMarks } from './say-marks.ts';

/** The order list, the spares and the tools as the rows of a workbook. */
export function orderRows(board: OrderBoard): {
  readonly list: readonly ListedRow[];
  readonly spares: readonly SpareRow[];
  readonly tools: readonly ToolRow[];
} {
  const { units } = board.heading.project;
  const say = (length: Length | null) => (length === null ? '' : formatLength(length, units));
  const list = board.orders.flatMap(({ level, number, need, orderBy, lines }) =>
    lines.map((line) => ({
      level: level ?? 'whole job',
      order: number,
      needed: need.date ?? noDateWords(need.why),
      orderBy: orderBy ?? '',
      purpose: purposeWord(line),
      thing: orderLineWords(line),
      type: line.type ?? '',
      length: say(line.length),
      lengthMm: line.length === null ? null : toMm(line.length),
      ...shownQuantity(line, units),
      marks: sayMarks(line, board.marksOf),
    })),
  );
  const spares = board.spares.lines.map((line) => ({
    thing: orderLineWords(line),
    type: line.type ?? '',
    length: say(line.length),
    unit: line.unit,
    needed: line.needed,
    wastePercent: line.rule.wastePercent,
    waste: line.waste,
    percent: line.rule.percent,
    minimum: line.rule.minimum,
    spare: line.spare,
    owner: line.owner,
  }));
  const tools = board.tools.map((tool) => ({
    tool: tool.tool,
    perCrew: tool.perCrew,
    crews: tool.crewCount,
    which: `${tool.activity === null ? 'every crew' : activityWord(tool.activity)}${tool.crews === null ? '' : ', number by hand'}`,
    note: `${board.toolsStated ? '' : 'A suggestion. '}${tool.note ?? ''}`.trim(),
  }));
  return { list, spares, tools };
}
