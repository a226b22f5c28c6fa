import { unsureOf } from '../../geometry/outlines/index.ts';
import type { Shot } from '../../model/shot.ts';
import { reportWords } from '../../wording/report.ts';
import type { RankedFinding, ReportContext } from '../context.ts';
import { sayTaken } from '../dates.ts';
import type { PrintedStroke, PrintedTag, ReportPhoto } from '../model.ts';
import { asSentence, counted, shortened } from '../sentence.ts';
import { boxOf, type Frame, onPaper, type PixelBox, partFrame, wholeFrame } from './frame.ts';
import { type MeasuredMark, measuredMarks, saysMeasured } from './measured.ts';
import { scaleBar } from './scale-bar.ts';
import { strokesFor } from './strokes.ts';
import { placeTags } from './tags.ts';

interface RoomOnPageOne {
  readonly hasChoices: boolean;
  readonly photos: number;
}

/** Small on page one, whole and large at its finding, whole and at least 80 mm beside its words. */
export type PhotoPlace = 'page-one' | 'wide' | 'beside';

const pageOneWindow = { widthMm: 80, heightMm: 41 };
/** Where the choices stand on page one too, its photos give way, so that all of it is read on one page. */
const pageOneWithChoices = { widthMm: 80, heightMm: 32 };
const wideMost = { widthMm: 178, heightMm: 102 };
const besideMost = { widthMm: 84, heightMm: 112 };
/** What a photo may take besides, by how many photos stand there: a finding without one leaves room. */
const mostGrowthMm: Readonly<Record<number, number>> = { 1: 20, 2: 12, 3: 4 };
const markScales: Readonly<Record<PhotoPlace, number>> = { 'page-one': 0.8, wide: 1, beside: 0.8 };

function frameFor(place: PhotoPlace, shot: Shot, marks: PixelBox | null, room: RoomOnPageOne): Frame {
  switch (place) {
    case 'page-one':
      return partFrame(shot, marks, {
        ...(room.hasChoices ? pageOneWithChoices : pageOneWindow),
        growMm: mostGrowthMm[room.photos] ?? 0,
      });
    case 'wide':
      return wholeFrame(shot, marks, wideMost);
    case 'beside':
      return wholeFrame(shot, marks, besideMost);
  }
}

function captionOf(
  shot: Shot,
  place: PhotoPlace,
  isPart: boolean,
  measured: readonly MeasuredMark[],
  context: ReportContext,
): string {
  const from = shortened(shot.seenFrom.replace(/^\s*from /i, ''), place === 'page-one' ? 36 : 200);
  const seen = from === '' ? '' : asSentence(`seen from ${from}`);
  const by = context.personName(shot.takenBy);
  const who = place !== 'page-one' && by !== null ? ` by ${by}` : '';
  const photo = `Photo ${shot.sequence}${who}, ${sayTaken(shot)}.`;
  const own = place === 'page-one' ? '' : asSentence(shot.caption);
  const part = isPart && place !== 'page-one' ? reportWords.partOfPhoto : '';
  const sizes = place === 'page-one' ? '' : saysMeasured(measured, context);
  return [seen, own, photo, part, sizes].filter((each) => each !== '').join(' ');
}

function alternativeOf(shot: Shot, entry: RankedFinding, marks: number, context: ReportContext): string {
  const what = shot.caption.trim() || (shot.component === null ? entry.line.title : context.place(shot.component));
  const marked =
    marks === 0 ? 'No mark on it.' : asSentence(`${counted(marks, 'mark')} of finding ${entry.line.number}`);
  return `Photo ${shot.sequence}: ${asSentence(what)} ${marked}`;
}

function barFor(
  measured: MeasuredMark | undefined,
  frame: Frame,
  drawn: { strokes: readonly PrintedStroke[]; tags: readonly PrintedTag[]; scale: number },
  { shop }: ReportContext,
): ReportPhoto['scaleBar'] {
  const box = measured && boxOf(measured.mark.points);
  if (!measured || !box) return null;
  const middle = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
  const strokes = drawn.strokes.map(({ points }) => points);
  return scaleBar(measured.plane, middle, frame, { ...drawn, strokes }, shop.units);
}

/** A shot with the marks of one finding, laid out for its place in the report. */
export function reportPhoto(
  shot: Shot,
  entry: RankedFinding,
  place: PhotoPlace,
  context: ReportContext,
  photosOnPageOne = 3,
): ReportPhoto {
  const marks = context.marksOn(shot.id, entry.finding.id).filter(({ role }) => role === 'finding');
  const box = boxOf(marks.flatMap(({ points }) => points));
  const hasChoices = (context.record.choices?.choices.length ?? 0) > 0;
  const frame = frameFor(place, shot, box, { hasChoices, photos: photosOnPageOne });
  const scale = markScales[place];
  const dashed = entry.line.state === 'suspected';
  const drawn = marks.map((mark) => ({
    strokes: strokesFor(
      mark.shape,
      mark.points.map((point) => onPaper(frame, point)),
      { scale, dashed, unsure: unsureOf(mark) },
    ),
    tagAt: mark.tagAt === null ? null : onPaper(frame, mark.tagAt),
  }));
  const measured = measuredMarks(marks, context);
  const tags = placeTags(
    drawn
      .map(({ strokes, tagAt }) => ({
        tag: entry.tag,
        strokes: strokes.flatMap(({ points }) => points),
        middle: tagAt,
      }))
      .filter(({ strokes }) => strokes.length > 0),
    frame,
    scale,
  );
  return {
    digest: shot.digest,
    widthMm: frame.widthMm,
    heightMm: frame.heightMm,
    picture: frame.picture,
    markScale: scale,
    strokes: drawn.flatMap(({ strokes }) => strokes),
    tags,
    scaleBar: barFor(measured[0], frame, { strokes: drawn.flatMap((each) => each.strokes), tags, scale }, context),
    caption: captionOf(shot, place, frame.isPart, measured, context),
    alternative: alternativeOf(shot, entry, marks.length, context),
    missing: reportWords.photoMissing,
  };
}
