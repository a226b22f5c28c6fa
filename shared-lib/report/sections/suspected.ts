import { sheetName } from '../../wording/report.ts';
import type { ReportContext } from '../context.ts';
import type { RowsSection } from '../model.ts';
import { asPart, asSentence, shortened } from '../sentence.ts';

/** Possible causes and what bore on each, those that were given up too. */
export function suspected(context: ReportContext): RowsSection | null {
  const { record } = context;
  const suspicions = record.choices?.suspicions ?? [];
  if (suspicions.length === 0) return null;
  const nameOf = (findingId: string | null, readingId: string | null): string => {
    const finding = record.findings.find(({ id }) => id === findingId);
    if (finding)
      return finding.kind === 'observation' ? shortened(asPart(finding.words), 60) : `finding ${finding.number}`;
    const reading = record.readings.find(({ id }) => id === readingId);
    return reading === undefined ? 'what is no longer here' : asPart(sheetName(reading.sheet));
  };
  return {
    kind: 'rows',
    heading: 'What was suspected',
    intro: '',
    rows: suspicions.map(({ what, evidence, closedBecause }) => ({
      label: what.charAt(0).toUpperCase() + what.slice(1),
      paragraphs: [
        ...evidence.map(({ findingId, readingId, bears, because }) =>
          asSentence(
            `${bears === 'cannot tell' ? 'cannot tell' : bears}: ${nameOf(findingId, readingId)}${because.trim() === '' ? '' : ` (${asPart(because)})`}`,
          ),
        ),
        closedBecause === null ? '' : asSentence(`given up: ${asPart(closedBecause)}`),
      ].filter((each) => each !== ''),
    })),
    quoted: [],
  };
}
