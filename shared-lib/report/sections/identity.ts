import { speakNumbering } from '../../parts/speak-numbering.ts';
import { disclaimer, reportWords } from '../../wording/report.ts';
import type { ReportContext } from '../context.ts';
import { sayIsoDay, sayMoment, sayZone } from '../dates.ts';
import { sayHours } from '../hours.ts';
import { markOf } from '../mark-of.ts';
import type { IdentitySection, ReportRow } from '../model.ts';

const row = (label: string, ...paragraphs: readonly string[]): ReportRow[] => {
  const kept = paragraphs.filter((each) => each.trim() !== '');
  return kept.length === 0 ? [] : [{ label, paragraphs: kept }];
};

const joined = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part): part is string => part !== undefined && part.trim() !== '').join(', ');

/** What it is called and when it was made; a correction says which revision it replaces. */
function reportLine({ issue, nowMs, zoneOffsetMin }: ReportContext): string {
  const written = `${sayMoment({ atMs: nowMs, zoneOffsetMin })} (${sayZone(zoneOffsetMin)})`;
  if (issue === undefined)
    return `${reportWords.draftMark}: it has no number and no date of issue. Written ${written}.`;
  const replaces = issue.revision > 1 ? ` It replaces revision ${issue.revision - 1}.` : '';
  return `${markOf({ issue })}, issued ${written}.${replaces}`;
}

/** Who stands for it. Issuing is the approval; the seal shows that nothing was changed after it. */
function approval({ issue, mechanic, shop }: ReportContext): string {
  const who = joined(mechanic?.name, shop.name);
  if (issue === undefined) return 'Not approved: it is a draft.';
  return `Approved and issued by ${who}. The seal of the shop (an electronic signature over the whole file, which any reader of PDFs can check) stands for the signature.`;
}

/** Who, what, when, by which conventions. Elements follow ISO/IEC 17020 clause 7.4, as far as a draft has them. */
export function identity(context: ReportContext): IdentitySection {
  const { record, shop, mechanic, zoneOffsetMin, programVersion } = context;
  const { machine, owner, visit } = record;
  return {
    kind: 'identity',
    heading: 'What this report is',
    disclaimer,
    rows: [
      ...row('Report', reportLine(context)),
      ...row('Approval', approval(context)),
      ...row('Changed since the revision before', ...(context.issue?.changes ?? [])),
      ...row('Inspected', sayIsoDay(visit.date)),
      ...row(
        'By',
        joined(mechanic?.name, mechanic?.trade),
        joined(shop.name, shop.address.replaceAll('\n', ', '), shop.phone),
      ),
      ...row(
        'Machine',
        joined(
          machine.kind,
          machine.year,
          machine.serial === '' ? undefined : `serial ${machine.serial}`,
          machine.engineSerial === undefined ? undefined : `engine ${machine.engineSerial}`,
        ),
        machine.note ?? '',
      ),
      ...row('Hours', sayHours(record, shop.units).how),
      ...(owner === null ? [] : row('Owner', joined(owner.name, owner.capacity, owner.place))),
      ...row('How places are said', speakNumbering(context.layout)),
      ...row(
        'Units and times',
        `${shop.units === 'metric' ? 'Metric units' : 'US customary units'}; what was typed stands in the record as it was typed. Times are on the clock of the shop or the camera, zone ${sayZone(zoneOffsetMin)} from UTC unless said otherwise.`,
      ),
      ...row(
        'The record',
        'The whole record of this visit is attached to this PDF as record.json, so that any program can read it. Its digest stands in the foot of every page.',
      ),
      ...row('Made with', `Witness Mark ${programVersion}`),
    ],
  };
}
