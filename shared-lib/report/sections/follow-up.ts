import { urgencyWords } from '../../judgement/urgency.ts';
import { mendedByWork } from '../after-work.ts';
import type { ReportContext } from '../context.ts';
import type { ReportRow, RowsSection } from '../model.ts';
import { asPart, asSentence } from '../sentence.ts';

/** What to watch and by when, for everything that the work has not mended and that has a clock or a sign to look for. */
export function followUp(context: ReportContext): RowsSection | null {
  const mended = mendedByWork(context);
  const standing = context.ranked.filter(({ finding }) => !mended.has(finding.id));
  const rows = standing.flatMap(({ finding, line }): ReportRow[] => {
    const watch = finding.watchFor.trim() === '' ? '' : asSentence(`watch for: ${asPart(finding.watchFor)}`);
    const isSeen = line.state !== 'not-examined';
    const clock =
      finding.urgency === null || finding.urgency > 4 || !isSeen
        ? ''
        : asSentence(`likely to show ${urgencyWords(finding.urgency).within.replace('hours', 'hours of work')}`);
    const again = !isSeen ? 'Still to be looked at.' : finding.action === 'monitor' ? 'To be looked at again.' : '';
    const said = [again, clock, watch].filter((each) => each !== '');
    return watch === '' && again === ''
      ? []
      : [{ label: `${line.number}`, title: line.title, paragraphs: said }].map(({ label, title, paragraphs }) => ({
          label: `Finding ${label}`,
          paragraphs: [`${asSentence(title)} ${paragraphs.join(' ')}`],
        }));
  });
  if (rows.length === 0) return null;
  return { kind: 'rows', heading: 'What to watch', intro: '', rows, quoted: [] };
}
