import type { ReportContext } from '../context.ts';
import type { ReportRow, RowsSection } from '../model.ts';
import { sayTyped } from '../reading-words.ts';
import { asSentence, listed, paragraphs } from '../sentence.ts';

function howItIsUsed({ record }: ReportContext): string {
  const { use } = record.visit;
  const ways = [
    ...(use.road ? ['driven on the road'] : []),
    ...(use.slope ? ['worked on slopes'] : []),
    ...(use.peopleNear ? ['worked near people'] : []),
  ];
  const ahead = `about ${use.exposureHours}\u202fhours of work ahead`;
  return asSentence(ways.length === 0 ? ahead : `${listed(ways)}; ${ahead}`);
}

export function complaint(context: ReportContext): RowsSection {
  const { record } = context;
  const { visit, scope } = record;
  const asked = scope.filter(({ notApplicableBecause }) => notApplicableBecause === null);
  const rows: ReportRow[] = [
    ...(asked.length === 0
      ? []
      : [
          {
            label: 'Asked for',
            paragraphs: [asSentence(`to look at: ${asked.map(({ path }) => context.place(path)).join('; ')}`)],
          },
        ]),
    { label: 'How it is used', paragraphs: [howItIsUsed(context)] },
    ...(Object.keys(visit.conditions).length === 0
      ? []
      : [{ label: 'Conditions', paragraphs: [asSentence(sayTyped(visit.conditions))] }]),
  ];
  return {
    kind: 'rows',
    heading: 'What the owner said, and what was asked for',
    intro: visit.complaint.trim() === '' ? 'The owner’s words were not written down.' : '',
    rows,
    quoted: paragraphs(visit.complaint),
  };
}
