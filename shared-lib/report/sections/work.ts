import { tierWords } from '../../judgement/tiers.ts';
import { resultKindOf } from '../../readings/result-kind.ts';
import { sheetOf } from '../../sheets/index.ts';
import { listed } from '../../wording/listed.ts';
import { sheetName } from '../../wording/report.ts';
import { outcomeWords, type WorkItem, type WorkProof } from '../../work/records.ts';
import { mendedByWork, standingAfterWork } from '../after-work.ts';
import type { ReportContext } from '../context.ts';
import { sayMoment } from '../dates.ts';
import type { ReportRow, RowsSection } from '../model.ts';
import { showResult } from '../reading-words.ts';
import { asPart, asSentence, paragraphs } from '../sentence.ts';
import { statementOnUse } from '../statement-on-use.ts';
import { findingSpeaker } from './choices.ts';

/** `Steering free play, drag link: play 6.2°, within` */
function proofWords({ readingId, shotId }: WorkProof, context: ReportContext): string {
  const reading = context.record.readings.find(({ id }) => id === readingId);
  if (reading === undefined) {
    const shot = context.shots.find(({ id }) => id === shotId);
    return shot === undefined ? 'a photo that was put aside' : `photo ${shot.sequence}`;
  }
  const judged = reading.results.filter(({ verdict, value }) => value !== null && verdict !== 'recorded only');
  const lines = (judged.length > 0 ? judged : reading.results.slice(0, 1)).map(
    ({ of, value, uncertainty, verdict }) => {
      const shown =
        value === null ? '' : ` ${showResult(value, uncertainty, context.shop.units, resultKindOf(reading, of))}`;
      return `${of}${shown}, ${verdict}`;
    },
  );
  const name = sheetOf(reading.sheet)?.name ?? sheetName(reading.sheet);
  return `${asPart(name)}, ${asPart(context.place(reading.at))}: ${lines.join('; ')}`;
}

function provedBy(item: WorkItem, context: ReportContext): string {
  if (item.outcome === 'not-done') return '';
  if (item.proofs.length === 0) return 'Nothing on record shows yet that it holds.';
  return asSentence(`shown after the work by ${listed(item.proofs.map((proof) => proofWords(proof, context)))}`);
}

function partWords(item: WorkItem, { record, place }: ReportContext): string[] {
  if (item.parts.length === 0) return [];
  const parts = item.parts.map(({ words, amount, fittedPartId }) => {
    const fitted = record.fittedParts?.find(({ id }) => id === fittedPartId);
    const kind = fitted === undefined ? '' : `, ${partKinds[fitted.kind]}, at ${asPart(place(fitted.path))}`;
    return `${amount === '1' ? '' : `${amount} × `}${words}${kind}`;
  });
  return [asSentence(`went in: ${parts.join('; ')}`)];
}

const partKinds = { new: 'new', used: 'used', donor: 'from another machine' } as const;

function rowOf(item: WorkItem, context: ReportContext): ReportRow {
  const entry = context.ranked.find(({ finding }) => finding.id === item.findingId);
  const because = item.because.trim() === '' ? '' : `: ${asPart(item.because)}`;
  return {
    label: entry === undefined ? 'Other work' : `Finding ${entry.line.number}`,
    paragraphs: [
      ...(entry === undefined ? [] : [asSentence(entry.line.title)]),
      ...(item.words.trim() === '' ? [] : [asSentence(item.words)]),
      asSentence(`${outcomeWords[item.outcome]}${because}`),
      ...partWords(item, context),
      provedBy(item, context),
    ].filter((each) => each !== ''),
  };
}

/** Work and parts against the choice that was taken. */
export function workDone(context: ReportContext): RowsSection | null {
  const { work } = context.record;
  if (work === undefined || work.items.length === 0) return null;
  const say = findingSpeaker(context);
  const planned = work.planned.map(({ findingId }) => findingId);
  return {
    kind: 'rows',
    heading: 'The work done',
    intro: planned.length === 0 ? '' : asSentence(`agreed, and nothing is written down of it yet: ${say(planned)}`),
    rows: work.items.map((item) => rowOf(item, context)),
    quoted: [],
  };
}

function proved(context: ReportContext, words: string): string[] {
  const { work } = context.record;
  const mended = [...mendedByWork(context)];
  const shown = (work?.items ?? []).filter(({ proofs, outcome }) => outcome !== 'not-done' && proofs.length > 0);
  const say = findingSpeaker(context);
  const open = mended.filter((id) => work?.items.some((item) => item.findingId === id && item.proofs.length === 0));
  return [
    ...paragraphs(words).map(asSentence),
    ...shown.flatMap((item) => {
      const what = item.findingId === null ? asPart(item.words) : say([item.findingId]);
      return [asSentence(`${what}: ${listed(item.proofs.map((proof) => proofWords(proof, context)))}`)];
    }),
    ...(open.length === 0 ? [] : [asSentence(`mended, and not tested after the work: ${say(open)}`)]),
  ];
}

/** What stays always comes first; words of the mechanic's cannot make it look as if nothing did. */
function howToUse(context: ReportContext, words: string): string[] {
  const left = standingAfterWork(context).map(
    ({ line }) => `finding ${line.number}, ${asPart(line.title)} (${tierWords(line.tier).words})`,
  );
  return [
    statementOnUse(context).words,
    ...(left.length === 0 ? [] : [asSentence(`still there: ${left.join('; ')}`)]),
    ...paragraphs(words).map(asSentence),
  ];
}

function watch(context: ReportContext, words: string): string[] {
  const own = paragraphs(words).map(asSentence);
  if (own.length > 0) return own;
  return standingAfterWork(context)
    .filter(({ finding }) => finding.watchFor.trim() !== '')
    .map(({ finding, line }) => asSentence(`finding ${line.number}: ${asPart(finding.watchFor)}`));
}

const row = (label: string, said: readonly string[]): ReportRow[] =>
  said.length === 0 ? [] : [{ label, paragraphs: said }];

/** The page that goes with the machine: what was proved, how it may be used, what to watch, when to come back. */
export function handOver(context: ReportContext): RowsSection | null {
  const { work } = context.record;
  if (work === undefined) return null;
  const {
    proved: provedWords = '',
    limits = '',
    watch: watchWords = '',
    comeBack = '',
    oldParts = '',
    handedTo = '',
  } = work.handOver ?? {};
  const said = (text: string) => paragraphs(text).map(asSentence);
  const to = handedTo.trim() === '' ? '' : ` to ${handedTo.trim()}`;
  const left = context.record.visit.leftAtMs;
  const when = left === null ? '' : ` on ${sayMoment({ atMs: left, zoneOffsetMin: context.zoneOffsetMin })}`;
  return {
    kind: 'rows',
    heading: 'Hand-over',
    ownPage: true,
    intro: to === '' && when === '' ? '' : `Handed over${to}${when}.`,
    rows: [
      ...row('What was proved', proved(context, provedWords)),
      ...row('How it may be used', howToUse(context, limits)),
      ...row('What to watch', watch(context, watchWords)),
      ...row('When to come back', said(comeBack)),
      ...row('Parts taken out', said(oldParts)),
      ...row('Beside this', [
        'The maker’s manual and local law stand before this page. What needs a licensed or competent person is not released by it.',
      ]),
    ],
    quoted: [],
  };
}
