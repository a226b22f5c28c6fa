import { arrivalCoverage, sayEarlierWork, sayFluid, viewWords } from '../../intake/words.ts';
import { listed } from '../../wording/listed.ts';
import type { ReportContext } from '../context.ts';
import type { ReportRow, RowsSection } from '../model.ts';
import { sayTyped } from '../reading-words.ts';
import { asSentence, paragraphs } from '../sentence.ts';

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

/** What others had done to it, its fluids, and which views of its arrival have a photo. */
function asReceived({ record, shots }: ReportContext): ReportRow[] {
  const { intake } = record;
  if (intake === undefined) return [];
  const { earlierWork, fluids, photos } = intake;
  const numberOf = (shotId: string) => shots.find(({ id }) => id === shotId)?.sequence;
  const shown = photos.flatMap(({ view, shotId }) => {
    const number = numberOf(shotId);
    return number === undefined ? [] : [`${viewWords[view]}, photo ${number}`];
  });
  const { missing } = arrivalCoverage(intake);
  const rows = [
    { label: 'Done before', paragraphs: earlierWork.map((work) => asSentence(sayEarlierWork(work))) },
    { label: 'Fluids as received', paragraphs: fluids.map((fluid) => asSentence(sayFluid(fluid))) },
    {
      label: 'On arrival',
      paragraphs: [
        ...(shown.length === 0 ? [] : [asSentence(shown.join('; '))]),
        ...(shown.length === 0 || missing.length === 0
          ? []
          : [asSentence(`not photographed: ${missing.map((view) => viewWords[view]).join(', ')}`)]),
      ],
    },
  ];
  return rows.filter(({ paragraphs: said }) => said.length > 0);
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
    ...asReceived(context),
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
