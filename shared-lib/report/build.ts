import { reportWords } from '../wording/report.ts';
import { contextOf } from './context.ts';
import { dayOf, sayIsoDay } from './dates.ts';
import { markOf } from './mark-of.ts';
import type { Report } from './model.ts';
import { printable } from './printable-text.ts';
import { canonicalRecord, recordFileName } from './record.ts';
import { sections } from './sections/index.ts';
import { shortened } from './sentence.ts';
import type { ReportSource } from './source.ts';

/** The first sixteen digits of a digest, in fours: enough to compare by eye. */
function shortDigest(hex: string): string {
  return (
    hex
      .slice(0, 16)
      .match(/.{1,4}/g)
      ?.join(' ') ?? ''
  );
}

/**
 * A condition report, assembled from the record. A draft consumes no number and says on every page what it is; an issued
 * one carries its number and revision there.
 *
 * @param digestOf  hex SHA-256 of a text's UTF-8 bytes
 */
export function buildReport(source: ReportSource, digestOf: (text: string) => string): Report {
  const context = contextOf(source);
  const { record, shop } = source;
  const json = canonicalRecord(source);
  const machine = [record.machine.kind, record.machine.serial].filter((each) => each.trim() !== '').join(' ');
  const mark = markOf(source);
  const named = machine.charAt(0).toUpperCase() + machine.slice(1);
  const report: Omit<Report, 'record'> = {
    language: 'en',
    title: `${reportWords.heading}: ${named}, ${sayIsoDay(record.visit.date)} (${mark.charAt(0).toLowerCase()}${mark.slice(1)})`,
    author: context.mechanic?.name || shop.name || 'Witness Mark',
    subject: `${reportWords.heading} of one machine with its record attached`,
    date: dayOf(source.nowMs, source.zoneOffsetMin),
    runningHead: `${shortened(named, 80)}, ${sayIsoDay(record.visit.date)}`,
    draftMark: source.issue === undefined ? mark : null,
    footLeft: source.issue === undefined ? reportWords.draftFoot : mark,
    footMiddle: `record ${shortDigest(digestOf(json))}`,
    footRight: reportWords.footRight,
    sections: sections.flatMap((section) => section(context) ?? []),
  };
  return {
    ...printable(report),
    record: { name: recordFileName, description: 'The record this report was made from, as canonical JSON.', json },
  };
}
