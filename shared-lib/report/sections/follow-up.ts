import { urgencyWords } from '../../judgement/urgency.ts';
import type { ReportContext } from '../context.ts';
import type { ReportRow, RowsSection } from '../model.ts';
import { asPart, asSentence } from '../sentence.ts';

/** What to watch and by when, for everything that has a clock or a sign to look for. */
export function followUp(context: ReportContext): RowsSection | null {
  const rows = context.ranked.flatMap(({ finding, line }): ReportRow[] => {
    const watch = finding.watchFor.trim() === '' ? '' : asSentence(`watch for: ${asPart(finding.watchFor)}`);
    const clock =
      finding.urgency === null || finding.urgency > 4
        ? ''
        : asSentence(
            `likely to show ${urgencyWords(finding.urgency).within} of work`.replace('start of work', 'start'),
          );
    const again = finding.action === 'monitor' ? 'To be looked at again.' : '';
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
