import type { JSX } from 'preact';
import { render } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { FOOT } from '../../src/domain/units/length.ts';
import { Button } from '../../views/components/button.tsx';
import { Caution } from '../../views/components/caution.tsx';
import { Confirm } from '../../views/components/confirm.tsx';
import { DataTable } from '../../views/components/data-table.tsx';
import { FaultList } from '../../views/components/fault-list.tsx';
import { ChoiceField, TextArea, TextField, TickField } from '../../views/components/field.tsx';
import { FindingList } from '../../views/components/finding-list.tsx';
import { Form } from '../../views/components/form.tsx';
import { FormFaults } from '../../views/components/form-faults.tsx';
import { LengthText } from '../../views/components/length-text.tsx';
import { Live } from '../../views/components/live.tsx';
import { Meter } from '../../views/components/meter.tsx';
import { Money } from '../../views/components/money.tsx';
import { Pager } from '../../views/components/pager.tsx';
import { RunStrip } from '../../views/components/run-strip.tsx';
import { StepList } from '../../views/components/step-list.tsx';
import { formatTime } from '../../views/components/time.tsx';
import { Working } from '../../views/components/working.tsx';
import { standardRun } from './support/runs.ts';

const evil = '<img src=x onerror=alert(1)>';
const text = (node: JSX.Element) => render(node).replaceAll(/<[^>]*>/g, '');

describe('a field', () => {
  it('says what is wrong beside the box, joined to it, and keeps what was typed', () => {
    const html = render(<TextField name="length" label="Length" value="21336" hint="feet" fault="That is 4 miles." />);
    expect(html).toContain('aria-invalid="true" aria-describedby="f-length-hint f-length-fault"');
    expect(html).toContain('value="21336"');
    expect(html).toMatch(/<div class="fault" id="f-length-fault">.*That is 4 miles\./);
    expect(html).toContain('<label for="f-length">');
  });

  it('without a fault says nothing of one', () => {
    const html = render(<TextField name="length" label="Length" />);
    expect(html).not.toMatch(/aria-invalid|aria-describedby|class="fault"/);
  });

  it('never sends a password back to the page', () => {
    expect(render(<TextField name="p" kind="password" label="Password" value="secret" />)).not.toContain('secret');
  });

  it('keeps pasted cells as text, also when they close the box', () => {
    const html = render(<TextArea name="rows" label="Rows" kind="sheet" value={`</textarea>${evil}`} />);
    expect(html).not.toContain('<img');
    expect(html.match(/<\/textarea>/g)).toHaveLength(1);
  });

  it('a choice keeps what was chosen and a tick what was ticked', () => {
    const options = [
      { value: 'l', word: 'left' },
      { value: 'r', word: 'right' },
    ];
    const html = render(<ChoiceField name="side" label="Side" value="r" options={options} />);
    expect(html).toMatch(/value="r" checked/);
    expect(html).not.toMatch(/value="l" checked/);
    expect(render(<TickField name="ok" label="Seen" ticked="yes" />)).toContain('checked');
  });
});

describe('a form', () => {
  const html = render(
    <Form action="/x" csrf="tok" submissionId="s1" version={4} keep={{ label: 'Joint J03' }}>
      <Button kind="lead">Save</Button>
    </Form>,
  );

  it('carries token, submission and version, and can be kept on the phone', () => {
    expect(html).toContain('<input type="hidden" name="_csrf" value="tok"/>');
    expect(html).toContain('name="submissionId" value="s1"');
    expect(html).toContain('name="version" value="4"');
    expect(html).toContain('class="form keep" method="post" action="/x" data-keep-label="Joint J03"');
  });

  it('a barred button says why', () => {
    const button = render(<Button barred="Two stops bar it.">Release</Button>);
    expect(button).toMatch(/<button[^>]* disabled>Release/);
    expect(button).toContain('Two stops bar it.');
  });

  it('asks once before it takes something away, without script', () => {
    const ask = render(
      <Confirm ask="Remove" question="It goes." answer="Remove R1" action="/r" csrf="t" version={2} />,
    );
    expect(ask).toMatch(/^<details class="ask"><summary class="button stops">Remove<\/summary><form/);
    expect(ask).toContain('name="version" value="2"');
  });

  it('counts refused entries and links each to its field', () => {
    const faults = [
      { field: 'f-a', label: 'A', message: 'wrong' },
      { field: 'f-b', label: 'B', message: 'too' },
    ];
    expect(text(<FormFaults faults={faults} />)).toContain('2 entries need your attention');
    expect(render(<FormFaults faults={faults} />)).toContain('<a href="#f-b">B</a>');
    expect(render(<FormFaults faults={[]} />)).toBe('');
  });
});

describe('a table', () => {
  const table = render(
    <DataTable
      caption="Runs"
      rows={[{ id: 'R1', feet: 70 }]}
      keyOf={(row) => row.id}
      columns={[
        { head: 'Run', kind: 'name', cell: (row) => row.id, sort: { href: '?sort=-run', now: 'up' }, foot: 'All' },
        { head: 'Length', kind: 'number', cell: (row) => row.feet },
      ]}
    />,
  );

  it('has a caption, headers of columns and rows, and figures to the right', () => {
    expect(table).toContain('<caption>Runs</caption>');
    expect(table).toContain('<th scope="col" role="columnheader" aria-sort="ascending"><a href="?sort=-run">Run');
    expect(table).toContain('<th scope="row" role="rowheader" data-label="Run"><div>R1</div></th>');
    expect(table).toContain('<td role="cell" class="num" data-label="Length"><div>70</div></td>');
  });

  it('leaves an empty cell empty, so that nothing stands there on a phone', () => {
    expect(table).toContain('<td role="cell" class="num" data-label="Length"></td>');
  });

  it('shows what stands for nothing when there is nothing', () => {
    const none = <DataTable caption="c" rows={[]} keyOf={String} columns={[]} none={<p>No runs yet.</p>} />;
    expect(render(none)).toBe('<p>No runs yet.</p>');
  });

  it('a table that scrolls is a region with a name and a place in the tab order', () => {
    const wide = render(<DataTable caption="Hours" rows={[1]} keyOf={String} columns={[]} narrow="scrolls" />);
    expect(wide).toMatch(/^<section class="table scrolls" tabindex="0" aria-label="Hours, scrolls sideways">/);
  });

  it('lists every faulty cell of a paste with its row, column, what was written and what to do', () => {
    const html = render(
      <FaultList caption="1 row" faults={[{ row: 3, column: 'at', value: evil, remedy: 'Write feet.' }]} />,
    );
    expect(html).not.toContain('<img');
    expect(html).toMatch(/3.*at.*&lt;img.*Write feet\./);
  });

  it('says which rows these are, and of how many', () => {
    expect(text(<Pager first={51} last={100} total={431} things="runs" before="?p=1" after="?p=3" />)).toContain(
      'runs 51 to 100 of 431',
    );
  });
});

describe('what is said', () => {
  it('a finding shows its sign, its word, what to do, the place and the source', () => {
    const finding = {
      rule: 'r',
      severity: 'stop',
      run: 'R1',
      at: 40.25 * FOOT,
      message: evil,
      source: 'NEC 368.30',
    } as const;
    const html = render(<FindingList findings={[finding]} units="ft-in" runHref={(run) => `/runs/${run}`} />);
    expect(html).toMatch(/<li class="stop"><span class="severity"><svg.*<\/svg> Stop<\/span>/);
    expect(html).toContain('<a href="/runs/R1">Run R1</a> at 40\'-3&quot;.');
    expect(html).toContain('NEC 368.30');
    expect(html).not.toContain('<img');
  });

  it('a figure opens to its formula, its inputs and where they came from', () => {
    const html = text(
      <Working
        figure="2.40 h"
        of="hours of joints"
        formula="hours = quantity × base"
        inputs={[{ name: 'joints', value: '4', source: 'layout' }]}
        source="labour book"
      />,
    );
    expect(html).toBe('2.40 h – the working of hours of jointshours = quantity × basejoints4 layoutlabour book');
  });

  it('progress is told in words beside the bar, also past the plan', () => {
    expect(text(<Meter done={125} planned={110} of="h" />)).toBe('125 of 110 h');
    expect(render(<Meter done={0} planned={0} of="joints" />)).not.toContain('NaN');
  });

  it('an unknown length and an absent price are no noughts', () => {
    expect(text(<LengthText length={null} units="metric" />)).toBe('unknown');
    expect(text(<Money minor={null} currency="USD" />)).toBe('no price');
    expect(text(<Money minor={126310000} currency="USD" />)).toBe('$1,263,100.00');
  });

  it('a time is told in the zone of the job, over the change of summer time', () => {
    expect(formatTime(new Date('2026-01-12T20:40:00Z'), 'America/Chicago')).toBe('12 Jan 2026, 14:40 CST');
    expect(formatTime(new Date('2026-05-12T05:00:00Z'), 'America/Chicago')).toBe('12 May 2026, 00:00 CDT');
  });

  it('the next step is large and marked for readers, the others wait', () => {
    const html = render(
      <StepList
        label="Joint"
        steps={[
          { what: 'Align', state: 'done' },
          { what: 'Seat', state: 'next' },
          { what: 'Close', state: 'later' },
        ]}
      />,
    );
    expect(html.match(/aria-current="step"/g)).toHaveLength(1);
    expect(html).toMatch(/class="next" aria-current="step"><div><div class="what">Seat/);
  });

  it('the caution never speaks as a permission', () => {
    expect(text(<Caution />)).toMatch(/no permission and no sealed design/);
  });

  it('a live part asks for itself again when the job changes, and keeps what is being typed', () => {
    const html = render(
      <Live id="floors" href="/jobs/pq/floors/part">
        x
      </Live>,
    );
    expect(html).toContain('hx-trigger="job-changed from:body delay:300ms" hx-swap="outerMorph"');
    expect(html).not.toMatch(/\[.*\]/);
  });

  it('the strip has the same things as a table', () => {
    const html = render(<RunStrip {...standardRun()} units="ft-in" />);
    const table = html.slice(html.indexOf('<table'));
    expect(table.match(/<tr/g)).toHaveLength(1 + 4 + 4 + 8 + 20);
    expect(table).toContain('<a href="#L2-R03-A-J02">J02</a>');
  });
});
