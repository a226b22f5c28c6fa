import { speakComponent } from '../../parts/speak-component.ts';
import { historyOf, turnReason } from '../../suspicions/history.ts';
import type { EvidenceSource } from '../../suspicions/sources.ts';
import { type SuspicionColumn, suspicionTable } from '../../suspicions/table.ts';
import { worstVerdict } from '../../verdict/worst.ts';
import type { ReportContext } from '../context.ts';
import { sayMoment } from '../dates.ts';
import type { SuspicionsSection } from '../model.ts';
import { asPart, asSentence, shortened } from '../sentence.ts';

/** How many stand side by side on paper and can still be read. */
const mostAcross = 3;

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function evidenceName(source: EvidenceSource): string {
  if (source.kind === 'finding') return `Finding ${source.finding.number}: ${asPart(source.title)}`;
  return shortened(source.title, 90);
}

function saidBy(source: EvidenceSource): string {
  if (source.kind === 'reading') return worstVerdict(source.reading.results.map(({ verdict }) => verdict));
  if (source.kind === 'observation') return 'seen or told';
  return source.finding.state === 'none-found' ? 'not found' : source.finding.state;
}

function stateOf({ suspicion, state, foundBy }: SuspicionColumn, context: ReportContext): string {
  if (state === 'given-up') return asSentence(`given up: ${asPart(turnReason(suspicion.closedBecause ?? ''))}`);
  const number = context.findingById(foundBy ?? '')?.number;
  return state === 'found' && number !== undefined ? `Found to be so: finding ${number}.` : 'Still open.';
}

function tableOf(columns: readonly SuspicionColumn[], sources: readonly EvidenceSource[], context: ReportContext) {
  const speaking = sources.filter(({ id }) => columns.some(({ cells }) => cells.has(id)));
  return {
    columns: columns.map((column) => {
      const { what, at } = column.suspicion;
      return {
        what: capitalised(what),
        where: at !== null && context.isKnownPlace(at) ? speakComponent(at, context.layout) : '',
        state: stateOf(column, context),
        isOver: column.state === 'given-up',
      };
    }),
    lines: speaking.map((source) => ({
      evidence: evidenceName(source),
      said: saidBy(source),
      cells: columns.map(({ cells }) => {
        const cell = cells.get(source.id);
        if (cell === undefined) return { bears: '' as const, because: '' };
        // The limit of the sheet stands beside the mechanic's reason: what a test cannot tell is not left out.
        const reasons = [cell.because, cell.limit].filter((each) => each !== '').map(asSentence);
        return { bears: cell.bears, because: reasons.join(' ') };
      }),
    })),
  };
}

/** Possible causes against what bore on each, those that were given up too, and what became of them. */
export function suspected(context: ReportContext): SuspicionsSection | null {
  const { record, zoneOffsetMin } = context;
  if (!record.choices?.suspicions.length) return null;
  const { columns, sources } = suspicionTable(record, context.shop.units);
  const groups = Array.from({ length: Math.ceil(columns.length / mostAcross) }, (_, index) =>
    columns.slice(index * mostAcross, (index + 1) * mostAcross),
  );
  return {
    kind: 'suspicions',
    heading: 'What was suspected',
    note: 'A test that did not show a thing has not ruled it out; what it can miss stands beside it.',
    tables: groups.map((group) => tableOf(group, sources, context)),
    historyHeading: 'What became of each',
    history: columns.map(({ suspicion }) => ({
      label: capitalised(suspicion.what),
      paragraphs: historyOf(suspicion, record).map(({ atMs, words }) =>
        atMs === null ? asSentence(words) : `${sayMoment({ atMs, zoneOffsetMin })}: ${asPart(words)}.`,
      ),
    })),
  };
}
