import type { Finding } from '../finding.ts';
import type { HeldSection, Run } from '../model.ts';
import type { LostSections } from './cover-run.ts';
import type { Say } from './say.ts';

export const SUBSTITUTION_LOST = 'substitution.lost';
export const SUBSTITUTION_KEPT = 'substitution.kept';

const SOURCE = 'the field revision of this run';

/**
 * What became of the sections that the floor substituted: a stop where the route does not let them stand, so that nobody
 * releases others over them without having said so, and a note where they are kept. None for a run that holds nothing.
 */
export function fieldHoldFindings(run: Run, lost: readonly LostSections[], say: Say): Finding[] {
  if (run.fieldHold === null) return [];
  const gone = new Set(lost.flatMap(({ sections }) => sections));
  const kept = run.fieldHold.sections.filter((section) => !gone.has(section));
  return [...lost.map((one) => lostFinding(run, one, say)), ...chains(kept).map((chain) => keptNote(run, chain, say))];
}

function lostFinding(run: Run, { sections, why }: LostSections, say: Say): Finding {
  const message =
    `The floor put ${chains(sections)
      .map((chain) => sectionWords(chain, say))
      .join(' and ')} into this run, and on the ` +
    `route as drawn they cannot stand: ${why}. The sections are chosen freely here. Put the route back; or let go of what ` +
    'the floor substituted, on the page of this run, and the next release takes those sections out again.';
  const at = sections[0]?.from ?? null;
  return { rule: SUBSTITUTION_LOST, severity: 'stop', run: run.id, at, message, source: SOURCE };
}

function keptNote(run: Run, chain: readonly HeldSection[], say: Say): Finding {
  const message =
    `Kept to what the floor substituted: ${sectionWords(chain, say)}. What costs least is not looked for there, and ` +
    'hangers stay where they stood as long as that is legal.';
  return {
    rule: SUBSTITUTION_KEPT,
    severity: 'note',
    run: run.id,
    at: chain[0]?.from ?? null,
    message,
    source: SOURCE,
  };
}

/** `10'-0" and 10'-0" from 20'-0" to 40'-0"`. */
function sectionWords(chain: readonly HeldSection[], say: Say): string {
  const lengths = chain.map(({ from, to, kind }) => `${say(to - from)}${kind === 'cut' ? ' cut' : ''}`);
  return `${lengths.join(' + ')} from ${say(chain[0]?.from ?? 0)} to ${say(chain.at(-1)?.to ?? 0)}`;
}

/** Sections that follow on each other, together. */
function chains(sections: readonly HeldSection[]): HeldSection[][] {
  const found: HeldSection[][] = [];
  for (const section of sections) {
    const last = found.at(-1);
    if (last !== undefined && last.at(-1)?.to === section.from) last.push(section);
    else found.push([section]);
  }
  return found;
}
