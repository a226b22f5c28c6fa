import type { ReportGap } from '../contract/reports.ts';

/** Gaps that a draft may show and an issued report may too: they cost its reader comfort, not knowledge. */
const optional = [/^No phone/, /not said where it was seen from/, /has no serial number/];

/**
 * What must be answered before a report is issued: who says it, of which machine, at what hours, and every finding whole.
 * Elements of ISO/IEC 17020:2012, 7.4.2: issuing body, date, item inspected, client where there is one, results.
 */
export function requiredForIssue(gaps: readonly ReportGap[]): readonly ReportGap[] {
  return gaps.filter(({ what }) => !optional.some((pattern) => pattern.test(what)));
}
