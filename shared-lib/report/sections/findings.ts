import { defectOf } from '../../defects/index.ts';
import { actionWords, tagWords } from '../../judgement/actions.ts';
import { tierWords } from '../../judgement/tiers.ts';
import { methodOf } from '../../methods/index.ts';
import { resultKindOf } from '../../readings/result-kind.ts';
import { listed } from '../../wording/listed.ts';
import { reportWords, sheetName } from '../../wording/report.ts';
import { mendedByWork } from '../after-work.ts';
import { certaintySentence } from '../certainty.ts';
import type { RankedFinding, ReportContext } from '../context.ts';
import type { FindingBlock, FindingsSection, ReportRow } from '../model.ts';
import { comparedPhotos } from '../photos/compared-photos.ts';
import { reportPhoto } from '../photos/report-photo.ts';
import { sayQuantities } from '../quantity-words.ts';
import { sayResultLine } from '../reading-words.ts';
import { asPart, asSentence, paragraphs } from '../sentence.ts';

const row = (label: string, ...said: readonly string[]): ReportRow[] => {
  const kept = said.map((each) => each.trim()).filter((each) => each !== '');
  return kept.length === 0 ? [] : [{ label, paragraphs: kept }];
};

function howFound({ finding }: RankedFinding): string[] {
  return finding.methods.map((code) => {
    const method = methodOf(code);
    return asSentence(`${method.name}. Cannot show: ${method.cannotSee}`);
  });
}

function standsHere({ line }: RankedFinding): string[] {
  const moved =
    line.movedBecause === null
      ? ''
      : asSentence(`moved by hand from place ${line.computedPlace} to ${line.place}: ${asPart(line.movedBecause)}`);
  const declined =
    line.namedDeclinedBecause === null
      ? ''
      : asSentence(
          `a condition that calls for “do not operate” was not followed because: ${asPart(line.namedDeclinedBecause)}`,
        );
  return [asSentence(line.why), declined, moved];
}

/** The mechanic's own words first; where there are none, what such a defect commonly leads to. */
function ifLeft({ finding }: RankedFinding): string[] {
  if (finding.ifLeft.trim() !== '') return [asSentence(finding.ifLeft)];
  const common = defectOf(finding.defect)?.ifLeft ?? [];
  return common.length === 0 ? [] : [asSentence(`${reportWords.commonly} ${listed(common, 'or')}`)];
}

function advised({ finding }: RankedFinding): string[] {
  const action = finding.action === null ? '' : actionWords[finding.action];
  const words = asSentence(finding.actionWords);
  const tags = [
    ...(finding.doNotOperate
      ? [`Tagged “${tagWords.doNotOperate.label}”: it protects ${tagWords.doNotOperate.protects}.`]
      : []),
    ...(finding.doNotRun ? [`Tagged “${tagWords.doNotRun.label}”: it protects ${tagWords.doNotRun.protects}.`] : []),
  ];
  return [[asSentence(action), words].filter((each) => each !== '').join(' '), ...tags];
}

function shownByReadings({ readings }: RankedFinding, context: ReportContext): string[] {
  return readings.map((reading) => {
    const taken = reading.results.filter(
      ({ value, seen }) => reading.sheetVersion === 0 || value !== null || seen !== null,
    );
    const lines = taken.map((result) => {
      const { what, value, verdict } = sayResultLine(result, context.shop.units, resultKindOf(reading, result.of));
      return `${what} ${value === '–' ? '' : `${value}, `}${verdict}`;
    });
    return asSentence(`${sheetName(reading.sheet)}: ${lines.join('; ')}`);
  });
}

/** Cause and consequence, each link with its certainty. */
function links({ finding }: RankedFinding, context: ReportContext): ReportRow[] {
  const name = (id: string) => {
    const entry = context.ranked.find((each) => each.finding.id === id);
    return entry === undefined ? null : `${entry.line.number}, ${asPart(entry.line.title)}`;
  };
  const say = (id: string, certainty: string, evidence: string) => {
    const named = name(id);
    const because = evidence.trim() === '' ? '' : `: ${asPart(evidence)}`;
    return named === null ? '' : asSentence(`${named} (${certainty}${because})`);
  };
  const { links: all } = context.record;
  return [
    ...row(
      'Comes from',
      ...all.filter(({ toId }) => toId === finding.id).map((link) => say(link.fromId, link.certainty, link.evidence)),
    ),
    ...row(
      'Leads to',
      ...all.filter(({ fromId }) => fromId === finding.id).map((link) => say(link.toId, link.certainty, link.evidence)),
    ),
  ];
}

function replaces({ finding }: RankedFinding, context: ReportContext): string[] {
  const earlier = finding.supersedes === null ? null : context.findingById(finding.supersedes);
  if (earlier === null) return [];
  const because = earlier.supersededBecause ?? finding.supersededBecause;
  const words = earlier.words.trim() || defectOf(earlier.defect)?.name || reportWords.titleNotSaid;
  return [
    asSentence(`an earlier conclusion: ${asPart(words)}${because ? `. Given up because: ${asPart(because)}` : ''}`),
  ];
}

function rowsOf(entry: RankedFinding, context: ReportContext): ReportRow[] {
  const { finding, line } = entry;
  const isMended = mendedByWork(context).has(finding.id);
  return [
    ...row('What', ...paragraphs(finding.words).map(asSentence)),
    ...row('Since then', isMended ? `${reportWords.mended}: see the work done. All else here is as it was found.` : ''),
    ...row('Size', ...sayQuantities(finding, context.shop.units).map((each) => asSentence(each))),
    ...row('Also at', ...finding.locations.slice(1).map((each) => asSentence(context.place(each)))),
    ...row('How found', ...howFound(entry)),
    ...row('How sure', certaintySentence(entry)),
    ...row('Readings', ...shownByReadings(entry, context)),
    ...row('Stands here', ...standsHere(entry)),
    ...links(entry, context),
    ...row('If left', ...ifLeft(entry)),
    ...row('Watch for', asSentence(finding.watchFor)),
    ...row('Advised', ...advised(entry)),
    ...row('Replaces', ...replaces(entry, context)),
    ...row('Not said yet', line.missing.length === 0 ? '' : asSentence(line.missing.join('; '))),
  ];
}

const ordinalEnding = (place: number): string => {
  const tens = place % 100;
  if (tens >= 11 && tens <= 13) return 'th';
  return ['th', 'st', 'nd', 'rd'][place % 10] ?? 'th';
};

function blockOf(entry: RankedFinding, context: ReportContext): FindingBlock {
  const { finding, line, tag, shots } = entry;
  const first = shots[0];
  // Upright pictures leave room for the words beside them; the lighter tiers don't need a page each.
  const upright = first !== undefined && first.height > first.width;
  const layout = line.tier <= 2 && !upright ? 'wide' : 'beside';
  return {
    tag,
    title: line.title || reportWords.titleNotSaid,
    place: context.place(finding.locations[0], { long: true }),
    tier: `${mendedByWork(context).has(finding.id) ? `${reportWords.was} ` : ''}${tierWords(line.tier).heading}`,
    order: `${line.place}${ordinalEnding(line.place)} of ${context.ranked.length}`,
    layout,
    photos: shots.map((shot, index) =>
      reportPhoto(shot, entry, layout === 'wide' && index === 0 ? 'wide' : 'beside', context),
    ),
    rows: rowsOf(entry, context),
    compared: comparedPhotos(entry, context),
  };
}

export function findings(context: ReportContext): FindingsSection | null {
  if (context.ranked.length === 0) return null;
  return {
    kind: 'findings',
    heading: 'The findings one by one',
    blocks: context.ranked.map((entry) => blockOf(entry, context)),
  };
}
