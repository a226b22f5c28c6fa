import type { ReportContext } from '../context.ts';
import { sayTaken } from '../dates.ts';
import type { PhotoIndexSection } from '../model.ts';

/** A digest in groups of eight, so that an eye can compare it. */
const grouped = (digest: string): string => digest.match(/.{1,8}/g)?.join(' ') ?? digest;

export function photoIndex(context: ReportContext): PhotoIndexSection | null {
  if (context.shots.length === 0) return null;
  const marked = new Set(context.record.marks.map(({ shotId }) => shotId));
  return {
    kind: 'photo-index',
    heading: 'Photos',
    columns: ['No.', 'Taken', 'Part', 'By', 'Marks', 'SHA-256 of the original file'],
    lines: context.shots.map((shot) => ({
      number: String(shot.sequence),
      time: sayTaken(shot),
      part: shot.component === null ? shot.caption || '–' : context.place(shot.component),
      takenBy: context.personName(shot.takenBy) ?? '–',
      marks: marked.has(shot.id) ? 'yes' : 'no',
      digest: grouped(shot.digest),
    })),
    note: 'Marks are drawn over the photos, never into them; the original files are kept as they came. Photos on these pages are reduced in size.',
  };
}
