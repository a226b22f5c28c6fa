import type { ErrorCode, WireError } from '../contract/errors.ts';
import { sayIsoDay } from '../report/dates.ts';
import { photoReason } from './photo-reasons.ts';

/** What happened, and what was kept. `kept` is empty where nothing of the mechanic's was at stake. */
export interface ErrorSentence {
  readonly happened: string;
  readonly kept: string;
}

type Details = WireError['details'];
type Sentence = (details: Details) => ErrorSentence;

/** A detail as text; a stand-in where an older recorder did not send it. */
function text(details: Details, key: string, standIn: string): string {
  const value = details[key];
  if (typeof value === 'string' && value !== '') return value;
  if (typeof value === 'number' && Number.isFinite(value)) return String(value);
  return standIn;
}

/** Hours in groups of three: `6 260 h`, with narrow spaces that never break. */
function hours(details: Details, key: string): string {
  const grouped = text(details, key, '?').replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f');
  return `${grouped}\u202fh`;
}

function list(details: Details, key: string): string[] {
  const value = details[key];
  return Array.isArray(value) ? value.filter((item) => typeof item === 'string') : [];
}

const fixed =
  (happened: string, kept: string): Sentence =>
  () => ({ happened, kept });

const typedIsKept = 'What you typed still stands here.';
const nothingChanged = 'Nothing was changed.';
const scaleStays = 'A scale kept before stays as it is.';
const comparisonStays = 'What was laid over each other before stays.';
const fileUntouched = 'The file is still where it was, untouched.';
const recordIsSafe = 'Everything up to your last tap is kept.';

/** Reasons that came through a JSON boundary as a list of `{ path, message }`. */
function firstIssue(details: Details): string {
  const issues = details.issues;
  const first: unknown = Array.isArray(issues) ? issues[0] : undefined;
  if (typeof first !== 'object' || first === null || !('message' in first)) return '';
  const path = 'path' in first && first.path !== '' ? `${String(first.path)}: ` : '';
  return ` (${path}${String(first.message)})`;
}

const howAbsent: ReadonlyMap<string, string> = new Map([
  ['said', 'was not there yet on'],
  ['not-found', 'was looked for, by a method that shows it, and not found on'],
  ['part-fitted', 'is on a part that was fitted only on'],
]);

function causeAfterEffect(details: Details): string {
  const [cause, effect] = [text(details, 'cause', '?'), text(details, 'effect', '?')];
  const absent = `${howAbsent.get(text(details, 'known', 'said')) ?? howAbsent.get('said')} ${sayIsoDay(text(details, 'absentOn', ''))}`;
  const there = sayIsoDay(text(details, 'thereOn', ''));
  const forms = details.formsInDays;
  const because =
    typeof forms === 'number'
      ? `finding ${cause} ${absent} and takes ${forms} days or more to form, but finding ${effect} was there by ${there}`
      : `finding ${cause} ${absent}, but finding ${effect} was there by ${there}`;
  return `A cause comes before its effect: ${because}.`;
}

const sentences: Readonly<Record<ErrorCode, Sentence>> = {
  'invalid-input': (d) => ({ happened: `This can't be written down as it is${firstIssue(d)}.`, kept: typedIsKept }),
  'unknown-operation': fixed('The window asked for something that the recorder does not know.', nothingChanged),
  'not-found': (d) => ({
    happened: `This ${text(d, 'record', 'entry')} is no longer here.`,
    kept: 'It may be in the bin, or belong to another data folder.',
  }),
  'not-ours': fixed('Something other than this window asked for it.', nothingChanged),
  'recorder-stopped': fixed(
    'The recorder stopped before it could answer.',
    `${recordIsSafe} Do it once more when it is back.`,
  ),
  'folder-held': (d) => ({
    happened: `The data folder is in use by ${text(d, 'holder', 'another program')}.`,
    kept: 'Close it there first. Reading is still possible.',
  }),
  'folder-read-only': fixed(
    'The data folder was opened for reading only, beside the program that works in it.',
    nothingChanged,
  ),
  'folder-older': fixed(
    'The data folder was written by an older version.',
    'Open it once for writing: it is copied, then brought up to date.',
  ),
  'folder-newer': (d) => ({
    happened: `The data folder was written by a newer version (${text(d, 'found', 'unknown')}; this one knows ${text(d, 'known', 'less')}).`,
    kept: 'It was not opened and not changed.',
  }),
  'folder-damaged': (d) => ({
    happened: `The data folder is damaged: ${text(d, 'what', 'the check found a fault')}.`,
    kept: 'Nothing was written to it. Copy the folder before anything else.',
  }),
  'folder-unwritable': (d) => ({
    happened: `The data folder can't be written to: ${text(d, 'reason', 'no reason given')}.`,
    kept: 'What was written before is kept.',
  }),
  'disk-full': fixed('The disk is full.', `${recordIsSafe} Make room, then do it once more.`),
  internal: (d) => ({
    happened: `Something went wrong inside the program. It is noted as ${text(d, 'id', 'an entry')} in the log.`,
    kept: recordIsSafe,
  }),
  'changed-by-another': fixed(
    'Somebody has changed this since, so it was not taken back.',
    'Their entry and yours both stand.',
  ),
  'nothing-to-undo': fixed('There is nothing to take back in this visit.', ''),
  'nothing-to-redo': fixed('There is nothing to bring back in this visit.', ''),
  'not-undoable': fixed("This step can't be taken back.", nothingChanged),
  'location-malformed': (d) => ({
    happened: `The place "${text(d, 'text', '')}" can't be read: ${text(d, 'reason', 'it is not complete')}.`,
    kept: typedIsKept,
  }),
  'location-unknown': (d) => ({
    happened: `This machine has no such place as "${text(d, 'text', '')}": ${text(d, 'reason', 'its layout does not name it')}.`,
    kept: typedIsKept,
  }),
  'layout-orphans': (d) => {
    const places = list(d, 'places');
    const named = places.length === 0 ? 'places that are in use' : places.join('; ');
    return {
      happened: `With this layout there would be no such place any more: ${named}.`,
      kept: 'The layout stays as it was. Move those findings first.',
    };
  },
  'hours-fall': (d) => ({
    happened: `The meter shows less than last time: ${hours(d, 'now')} now, ${hours(d, 'before')} before.`,
    kept: `${typedIsKept} Was the meter changed, was it misread, or is this another machine?`,
  }),
  'part-out-before-in': (d) => ({
    happened:
      d.fitted === undefined
        ? 'A part cannot come out in a visit before the one it was fitted in.'
        : `A part cannot come out before it went in: fitted at ${hours(d, 'fitted')}, taken out at ${hours(d, 'removed')}.`,
    kept: typedIsKept,
  }),
  'has-visits': fixed('This machine has visits on record, so it stays.', nothingChanged),
  'wrong-point-count': (d) => ({
    happened: `A mark of this shape needs ${pointCount(d)}.`,
    kept: 'The mark was not changed.',
  }),
  'point-outside-photo': fixed('A point lies outside the photo.', 'The mark was not changed.'),
  'finding-of-another-visit': fixed('That finding belongs to another visit.', nothingChanged),
  'link-to-itself': fixed("A finding can't lead to itself.", nothingChanged),
  'link-exists': fixed('These two are joined already.', nothingChanged),
  issued: fixed('This stands in a report that was issued.', 'It stays as it is. Write a new one that takes its place.'),
  'finding-not-ranked': fixed(
    'That is listed without a rank, so there is nothing to choose or to decide about it.',
    nothingChanged,
  ),
  'there-before-absent': (d) => ({
    happened: `It was noticed on ${sayIsoDay(text(d, 'noticedOn', ''))}, so on ${sayIsoDay(text(d, 'absentOn', ''))} it was there already.`,
    kept: nothingChanged,
  }),
  'cause-after-effect': (d) => ({
    happened: causeAfterEffect(d),
    kept: 'Nothing was joined or changed. If a day is wrong, put it right first.',
  }),
  'finding-not-confirmed': (d) => ({
    happened: `Finding ${text(d, 'number', '')} is not confirmed, so it can't show that the suspicion was right.`,
    kept: 'Let it bear on the suspicion instead; a photo or a reading that shows it confirms it.',
  }),
  decided: fixed(
    'The owner has decided on this choice.',
    'It stays as it was read out. Write another choice beside it.',
  ),
  'photo-empty': fixed('The file is empty. Copy it from the phone again.', fileUntouched),
  'photo-not-an-image': (d) => ({
    happened: `${capital(photoReason(text(d, 'found', 'this')))} is not a photo. Offer a still picture.`,
    kept: fileUntouched,
  }),
  'photo-damaged': (d) => ({
    happened: `The file is damaged: ${photoReason(text(d, 'why', 'it stops half way'))}. Copy it from the phone again.`,
    kept: fileUntouched,
  }),
  'photo-too-large': (d) => ({
    happened:
      'megabytes' in d
        ? `${text(d, 'megabytes', 'Too many')} MB; at most ${text(d, 'mostMegabytes', '1000')} can be taken in. Offer a smaller copy.`
        : `${text(d, 'megapixels', 'Too many')} megapixels; at most ${text(d, 'most', '120')} can be taken in. Offer a smaller copy.`,
    kept: fileUntouched,
  }),
  'photo-bomb': fixed('A small file that unfolds into far too much. It was not opened.', fileUntouched),
  'photo-is-drawing': fixed('A drawing, not a photo. Offer a JPEG or PNG of it.', fileUntouched),
  'photo-unreadable': (d) => ({
    happened: `The file can't be read: ${photoReason(text(d, 'reason', 'no reason given'))}.`,
    kept: d.reason === 'gone' ? nothingChanged : fileUntouched,
  }),
  'photo-decoder-gave-up': (d) => ({
    happened: `Opening it took too much ${text(d, 'reason', 'time')}. Offer a JPEG copy.`,
    kept: fileUntouched,
  }),
  'photo-kind-not-read': (d) => ({
    happened: `No way to read this kind here${kindNamed(d)}. Set the phone to save JPEG, or offer a copy.`,
    kept: fileUntouched,
  }),
  'photo-is-folder': fixed('A folder, not a photo. Open it and offer the photos in it.', fileUntouched),
  'photo-paste-too-large': (d) => ({
    happened: `Too large to paste; at most ${text(d, 'most', '64')} MB. Save it as a file and offer that.`,
    kept: nothingChanged,
  }),
  'token-spent': fixed('That file was offered before. Choose it once more.', fileUntouched),
  'report-not-ready': (d) => ({
    happened: `The report cannot be issued yet. Still missing: ${list(d, 'missing').join(' ') || 'something that it must say.'}`,
    kept: 'No number was used. The draft stays as it is.',
  }),
  'work-exists': fixed('The work on this finding is written down already. Change what stands there.', nothingChanged),
  'statement-not-shown': fixed(
    'No statement was shown to be decided on or signed. Open the finding or the choice and read its statement back first.',
    'Nothing was signed.',
  ),
  'report-nothing-changed': (d) => ({
    happened: `Nothing has changed since report ${text(d, 'number', '')}, revision ${text(d, 'revision', '')}.`,
    kept: 'That revision stands.',
  }),
  'report-nothing-to-print': fixed('There is nothing to print yet: this visit has no finding and no entry.', ''),
  'report-typesetting-failed': (d) => ({
    happened: `The report could not be set: ${text(d, 'message', 'no reason given')}.`,
    kept: 'The visit and its findings are all kept.',
  }),
  'file-unwritable': (d) => ({
    happened: `${text(d, 'path', 'The file')} can't be written: ${text(d, 'reason', 'no reason given')}.`,
    kept: 'Nothing was overwritten. Choose another place.',
  }),
  'file-unreadable': (d) => ({
    happened: `${text(d, 'path', 'The file')} can't be read: ${text(d, 'reason', 'no reason given')}.`,
    kept: fileUntouched,
  }),
  'not-our-pdf': fixed('This PDF carries no record of ours.', fileUntouched),
  'scenario-malformed': (d) => ({
    happened: `The case file does not follow its form${firstIssue(d)}.`,
    kept: 'Nothing of it was taken in.',
  }),
  'scenario-exists': (d) => ({
    happened: `A machine with the serial ${text(d, 'serial', 'of this case')} is here already.`,
    kept: 'Nothing was taken in twice.',
  }),
  'calibration-zero-length': fixed(
    'A known length of nothing measures nothing: its two ends lie on one spot, or its size is zero.',
    scaleStays,
  ),
  'calibration-too-few-points': (d) => ({
    happened: `At least ${text(d, 'fewest', 'four')} points are needed; ${text(d, 'given', 'fewer')} were set.`,
    kept: scaleStays,
  }),
  'calibration-points-collinear': fixed(
    'These points lie on one line, so the plane can lean any way. Take points that span an area.',
    scaleStays,
  ),
  'calibration-points-crossing': fixed(
    'These points go round another way in the photo than in their list: two of them are swapped.',
    scaleStays,
  ),
  'calibration-not-ellipse': fixed(
    'These points lie on no ellipse, so they are not the rim of one circle. Set five or more round the rim.',
    scaleStays,
  ),
  'calibration-without-plane': fixed(
    'Say which face this is: what does not lie in it is measured wrongly.',
    'Nothing was written yet. What you set on the photo still stands.',
  ),
  'calibration-of-another-photo': fixed(
    'That scale was taken on another photo, so it says nothing here.',
    nothingChanged,
  ),
  'calibration-straight-already': fixed(
    'A known length does not tell how the face leans, so there is nothing to straighten. Take a circle or four points.',
    nothingChanged,
  ),
  'trace-too-short': fixed('Both ends lie on one spot, so there is nothing to follow.', nothingChanged),
  'nothing-to-grow': fixed(
    'Round this spot no patch stands out from its surroundings. Draw it by hand with Area, or run a line over more of it.',
    nothingChanged,
  ),
  'mark-not-traced': fixed('This mark was drawn by hand, so there is no trace to lead another way.', nothingChanged),
  'mark-not-calibrated': fixed(
    'This mark has no size but in pixels. Set the scale of the photo first.',
    'The finding stays as it was.',
  ),
  'mark-without-size': (d) => ({
    happened: `This mark has no ${text(d, 'measure', 'size')} that can be measured.`,
    kept: 'The finding stays as it was.',
  }),
  'card-not-found': fixed(
    'No calibration card was found in this photo. It has to lie in it whole, in focus, with its white edge, and not in glare.',
    scaleStays,
  ),
  'mark-beyond-horizon': fixed(
    'The mark lies where the measured plane runs out of sight, so it has no size there.',
    'The mark stays as drawn.',
  ),
  'comparison-nothing-in-common': fixed(
    'No spot was found that shows in both photos. Set matching points by hand, or take another photo.',
    'Both photos stay as they are.',
  ),
  'comparison-too-few-points': (d) => ({
    happened: `At least ${text(d, 'fewest', 'two')} matching points are needed; ${text(d, 'given', 'fewer')} ${d.given === 1 ? 'is' : 'are'} set.`,
    kept: comparisonStays,
  }),
  'comparison-points-collinear': fixed(
    'The matching points lie on one line or on one spot, so the photos can lean any way. Set points that span an area.',
    comparisonStays,
  ),
  'comparison-points-crossing': fixed(
    'The matching points go round another way in the two photos: two of them are swapped.',
    comparisonStays,
  ),
  'comparison-not-earlier': fixed(
    'That photo is of no earlier visit of this machine, so there is nothing to compare it with.',
    nothingChanged,
  ),
  'annotation-malformed': (d) => ({
    happened: `This is no Web Annotation that can be read: ${text(d, 'reason', 'it does not follow the Recommendation')}.`,
    kept: 'No mark was added or changed.',
  }),
  'annotation-of-another-photo': fixed(
    'It is about a photo that is not in this visit.',
    'It was left out; the other marks are not touched by it.',
  ),
};

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function kindNamed(details: Details): string {
  const kind = text(details, 'kind', '');
  return kind === '' ? '' : ` (${photoReason(kind)})`;
}

function pointCount(details: Details): string {
  const fewest = text(details, 'fewest', 'more');
  const most = text(details, 'most', fewest);
  if (fewest === most) return fewest === '1' ? 'one point' : `${fewest} points`;
  return `at least ${fewest} points and at most ${most}`;
}

/** The sentence for one refusal, for window and command line alike. */
export function errorSentence(error: WireError): ErrorSentence {
  return sentences[error.code](error.details);
}

/** Both halves in one line. */
export function errorText(error: WireError): string {
  const { happened, kept } = errorSentence(error);
  return kept === '' ? happened : `${happened} ${kept}`;
}
