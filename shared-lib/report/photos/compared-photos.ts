import { type Homography, project } from '../../calibration/homography.ts';
import { isTold, writtenChange } from '../../comparison/changes-since.ts';
import type { FindingGrowth } from '../../comparison/growth-of-finding.ts';
import { bothSizes, growthCaution, growthWarnings, growthWords, whyNotTold } from '../../comparison/growth-words.ts';
import { registerByHand, toEarlier } from '../../comparison/register.ts';
import type { KeptComparison } from '../../contract/comparisons.ts';
import type { Mark } from '../../model/mark.ts';
import type { Shot } from '../../model/shot.ts';
import { showValue } from '../../quantities/show-quantity.ts';
import { reportWords } from '../../wording/report.ts';
import type { RankedFinding, ReportContext } from '../context.ts';
import { sayIsoDay } from '../dates.ts';
import type { ComparedPhotos, PrintedStroke, ReportPhoto, ReportTag } from '../model.ts';
import { asSentence, counted } from '../sentence.ts';
import { boxOf, onPaper, partFrame } from './frame.ts';
import { strokesFor } from './strokes.ts';
import { placeTags } from './tags.ts';

/** Two beside each other across the page, at least 80 mm wide each. */
const window = { widthMm: 84, heightMm: 63 };
const scale = 0.8;

type Drawn = Pick<Mark, 'shape' | 'points'>;

/** The points of marks as the other photo shows them; those beyond its horizon are left out. */
function carried(marks: readonly Drawn[], mapping: Homography): Drawn[] {
  return marks.map(({ shape, points }) => ({
    shape,
    points: points.flatMap((point) => project(mapping, point) ?? []),
  }));
}

interface Side {
  readonly shot: Shot;
  readonly marks: readonly Drawn[];
  /** Of the other photo: they widen the part that is shown, so that both show the same. */
  readonly others: readonly Drawn[];
  readonly ghosts: readonly Drawn[];
  readonly tag: ReportTag;
  readonly caption: string;
  readonly alternative: string;
}

function photoOf({ shot, marks, others, ghosts, tag, caption, alternative }: Side): ReportPhoto {
  const within = ({ x, y }: { x: number; y: number }): boolean => x >= 0 && y >= 0 && x < shot.width && y < shot.height;
  const box = boxOf([...marks, ...others].flatMap(({ points }) => points.filter(within)));
  const frame = partFrame(shot, box, window);
  const draw = ({ shape, points }: Drawn): PrintedStroke[] =>
    strokesFor(
      shape,
      points.map((point) => onPaper(frame, point)),
      { scale, dashed: tag.state === 'suspected' },
    );
  const drawn = marks.map(draw);
  const faint = ghosts.flatMap(draw).map((stroke) => ({ ...stroke, dashed: false, ghost: true }));
  return {
    digest: shot.digest,
    widthMm: frame.widthMm,
    heightMm: frame.heightMm,
    picture: frame.picture,
    markScale: scale,
    strokes: [...drawn.flat(), ...faint],
    tags: placeTags(
      drawn.flatMap((strokes) =>
        strokes.length === 0 ? [] : [{ tag, strokes: strokes.flatMap(({ points }) => points), middle: null }],
      ),
      frame,
      scale,
    ),
    scaleBar: null,
    caption,
    alternative,
    missing: reportWords.photoMissing,
  };
}

function told(kept: KeptComparison, growth: FindingGrowth, { shop, record }: ReportContext): string[] {
  const hours = (value: number | null) => (value === null ? '' : ` at ${showValue(value, '', 1, shop.units)}\u202fh`);
  const days = `Then is ${sayIsoDay(kept.earlier.date)}${hours(growth.hoursThen)}, now ${sayIsoDay(record.visit.date)}${hours(growth.hoursNow)}.`;
  const byHand = kept.pairs.filter(({ by }) => by === 'hand').length;
  const set = byHand === 0 ? '' : `, ${byHand} of them set by hand`;
  const apart = kept.pairs.length > 4 ? `; they lie ${kept.rmsPx.toFixed(1)} px apart` : '';
  const sizes = bothSizes(growth, shop.units);
  const written = isTold(growth) ? null : writtenChange(growth, kept.earlier, record.before?.old ?? []);
  return [
    written?.words ||
      growthWords(growth, shop.units) ||
      asSentence(`how far it has grown is not told: ${whyNotTold(growth)}`),
    [
      written === null ? asSentence(sizes) : 'As it was written down at both visits; the photos alone cannot tell.',
      days,
      ...growthWarnings(growth),
    ]
      .filter((each) => each !== '')
      .join(' '),
    `${growthCaution(growth)} The photos were laid over each other by ${counted(kept.pairs.length, 'matching point')}${set}${apart}. Dotted on the later one: the mark of then.`.trim(),
  ];
}

/** Earlier photos of this finding beside today's, with what has become of it; none where nothing was compared. */
export function comparedPhotos(entry: RankedFinding, context: ReportContext): ComparedPhotos[] {
  return (context.record.comparisons ?? []).flatMap((kept) => {
    const growth = kept.growth.find(({ findingId }) => findingId === entry.finding.id);
    const shot = context.shots.find(({ id }) => id === kept.shotId);
    if (!growth || !shot) return [];
    const registration = registerByHand(kept.pairs);
    const back = toEarlier(registration);
    const old = kept.oldMarks.filter(({ tag }) => tag.findingId === growth.earlierFindingId);
    const oldMarks = old.map(({ mark }) => mark);
    const today = context.marksOn(shot.id, entry.finding.id).filter(({ role }) => role === 'finding');
    const oldTag = old[0]?.tag;
    const ghosts = carried(oldMarks, registration.toLater);
    const before: Side = {
      shot: kept.earlier.shot,
      marks: oldMarks,
      others: back ? carried(today, back) : [],
      ghosts: [],
      tag: oldTag ?? entry.tag,
      caption: `Then: ${sayIsoDay(kept.earlier.date)}, photo ${kept.earlier.shot.sequence} of that visit.`,
      alternative: `The same place on ${sayIsoDay(kept.earlier.date)}, with the mark of then.`,
    };
    const after: Side = {
      shot,
      marks: today,
      others: ghosts,
      ghosts,
      tag: entry.tag,
      caption: `Now: ${sayIsoDay(context.record.visit.date)}, photo ${shot.sequence}.`,
      alternative: `The same place on ${sayIsoDay(context.record.visit.date)}, with today's mark and, dotted, the mark of then.`,
    };
    return [
      {
        heading: `Finding ${entry.tag.number}, then and now`,
        photos: [photoOf(before), photoOf(after)],
        words: told(kept, growth, context),
      },
    ];
  });
}
