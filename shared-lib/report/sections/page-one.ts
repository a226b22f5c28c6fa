import { tierWords } from '../../judgement/tiers.ts';
import type { Shot } from '../../model/shot.ts';
import { listed } from '../../wording/listed.ts';
import { reportWords } from '../../wording/report.ts';
import { mendedByWork } from '../after-work.ts';
import { certaintySentence } from '../certainty.ts';
import type { RankedFinding, ReportContext } from '../context.ts';
import { sayIsoDay } from '../dates.ts';
import { sayHours } from '../hours.ts';
import { markOf } from '../mark-of.ts';
import type { PageOneItem, PageOneSection, ReportRow } from '../model.ts';
import { reportPhoto } from '../photos/report-photo.ts';
import { asPart, asSentence, counted, shortened } from '../sentence.ts';
import { statementOnUse } from '../statement-on-use.ts';
import { choicesInShort } from './choices.ts';
import { decidedInShort } from './decided.ts';

/** Page one shows the three worst; the list on the next page shows all. */
const mostItems = 3;

function sentenceOf({ finding }: RankedFinding): string {
  const words = shortened(finding.words, 150);
  const left = finding.ifLeft.trim() === '' ? '' : asSentence(`If left: ${asPart(shortened(finding.ifLeft, 110))}`);
  return [asSentence(words), left].filter((each) => each !== '').join(' ');
}

/** The photo with a mark on it says more than one without. */
const shotOf = (entry: RankedFinding, context: ReportContext): Shot | undefined =>
  entry.shots.find(({ id }) => context.marksOn(id, entry.finding.id).length > 0) ?? entry.shots[0];

function itemOf(entry: RankedFinding, photos: number, context: ReportContext): PageOneItem {
  const shot = shotOf(entry, context);
  return {
    tag: entry.tag,
    title: shortened(entry.line.title, 90),
    sentence: sentenceOf(entry),
    state: `${mendedByWork(context).has(entry.finding.id) ? `${reportWords.mended}. ${reportWords.was} ` : ''}${tierWords(entry.line.tier).heading}. ${shortened(certaintySentence(entry), 130)}`,
    photo: shot === undefined ? null : reportPhoto(shot, entry, 'page-one', context, photos),
    noPhoto: entry.readings.length > 0 ? reportWords.noPhotoReading : reportWords.noPhoto,
  };
}

function plateOf({ record, shop }: ReportContext): PageOneSection['plate'] {
  const { machine } = record;
  const field = (label: string, value: string | undefined, unit = '') =>
    value === undefined || value.trim() === '' ? [] : [{ label, value: shortened(value, 22), unit }];
  const hours = sayHours(record, shop.units);
  return {
    kind: shortened(machine.kind.charAt(0).toUpperCase() + machine.kind.slice(1), 44),
    fields: [
      ...field('serial', machine.serial),
      ...field('engine', machine.engineSerial),
      ...field('year', machine.year),
      { label: hours.label, value: hours.value, unit: hours.unit },
    ],
  };
}

function headLines({ record, shop, mechanic, ...source }: ReportContext): string[] {
  const owner = record.owner === null ? '' : `, for ${shortened(record.owner.name, 60)}`;
  const trade = mechanic?.trade ? `, ${mechanic.trade}` : '';
  return [
    markOf(source),
    `${sayIsoDay(record.visit.date)}${owner}`,
    shortened(
      [shop.name, shop.address.replaceAll(/\s*\n\s*/g, ', ')].filter((each) => each.trim() !== '').join(', '),
      90,
    ),
    ...(mechanic === null ? [] : [shortened(`${mechanic.name}${trade}`, 60)]),
  ].filter((each) => each.trim() !== '');
}

function notLookedAt({ record }: ReportContext): ReportRow[] {
  const unseen = record.standing.notLookedAt;
  const shown = unseen.slice(0, 4);
  // Items with one reason are told of together.
  const named = [...Map.groupBy(shown, ({ because }) => because)].map(([because, items]) => {
    const names = listed(items.map(({ spoken }, index) => (index === 0 ? spoken : asPart(spoken))));
    return asSentence(`${names}: ${because === null ? 'no reason given' : asPart(because)}`);
  });
  const more = unseen.length > shown.length ? [`And ${unseen.length - shown.length} more.`] : [];
  return unseen.length === 0
    ? []
    : [{ label: 'Not looked at', paragraphs: [shortened([...named, ...more].join(' '), 300)] }];
}

function advised(entries: readonly RankedFinding[]): ReportRow[] {
  const said = entries.flatMap(({ finding, line }) =>
    finding.actionWords.trim() === ''
      ? []
      : [asSentence(`${line.number}: ${asPart(shortened(finding.actionWords, 90))}`)],
  );
  return said.length === 0 ? [] : [{ label: 'I advise', paragraphs: [said.join(' ')] }];
}

function further({ ranked }: ReportContext): ReportRow[] {
  const others = ranked.slice(mostItems);
  if (others.length === 0) return [];
  const byTier = [...new Set(others.map(({ line }) => line.tier))].map(
    (tier) => `${others.filter(({ line }) => line.tier === tier).length} “${tierWords(tier).words}”`,
  );
  return [
    {
      label: 'Also listed',
      paragraphs: [
        asSentence(`${counted(others.length, 'more finding')} on the pages after this one: ${listed(byTier)}`),
      ],
    },
  ];
}

function questions({ shop, mechanic }: ReportContext): ReportRow[] {
  if (shop.phone.trim() === '') return [];
  const who = mechanic === null ? shop.name : mechanic.name;
  return [{ label: 'Questions', paragraphs: [`Call ${shortened(who, 60)}, ${shop.phone.trim()}.`] }];
}

function hasChoices({ record }: ReportContext): boolean {
  return (record.choices?.choices.length ?? 0) > 0;
}

export function pageOne(context: ReportContext): PageOneSection {
  const worst = context.ranked.slice(0, mostItems);
  const statement = statementOnUse(context);
  const photos = worst.filter((entry) => shotOf(entry, context) !== undefined).length;
  return {
    kind: 'page-one',
    plate: plateOf(context),
    heading: reportWords.heading,
    headLines: headLines(context),
    statement: statement.words,
    statementTags: statement.tags,
    worstTier: context.ranked[0]?.line.tier ?? null,
    items: worst.map((entry) => itemOf(entry, photos, context)),
    rows: [
      ...advised(worst.filter(({ finding }) => !mendedByWork(context).has(finding.id))),
      ...choicesInShort(context),
      ...decidedInShort(context),
      ...notLookedAt(context),
      // The choices name every finding they leave; a count of them besides says nothing new.
      ...(hasChoices(context) ? [] : further(context)),
      ...questions(context),
    ],
  };
}
