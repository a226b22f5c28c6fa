/** The closed list of refusals. A sentence for each stands in shared-lib/wording. */
export const errorCodes = [
  'invalid-input', // details.issues: [{ path, message }]
  'unknown-operation',
  'not-found', // details.record, details.id
  'not-ours', // a sender that may not call
  'recorder-stopped',
  'folder-held', // details.holder, details.since
  'folder-read-only', // opened beside its holder
  'folder-older', // details.found, details.known: read-only, so not brought up to date
  'folder-newer', // details.found, details.known
  'folder-damaged', // details.what
  'folder-unwritable', // details.reason
  'disk-full',
  'internal', // details.id: the line in the log
  'changed-by-another', // undo refused: details.record, details.id
  'nothing-to-undo',
  'nothing-to-redo',
  'not-undoable', // details.operation
  'location-malformed', // details.text, details.reason
  'location-unknown', // details.text, details.reason
  'layout-orphans', // details.places: string[]
  'hours-fall', // details.before, details.now
  'part-out-before-in', // details.fitted, details.removed: hours
  'has-visits',
  'wrong-point-count', // details.shape, details.fewest, details.most
  'point-outside-photo',
  'finding-of-another-visit',
  'link-to-itself',
  'link-exists',
  'there-before-absent', // details.noticedOn, details.absentOn: days
  'cause-after-effect', // details.cause, details.effect: numbers; absentOn, thereOn: days; known; formsInDays
  'issued', // the finding stands in an issued report
  'work-exists', // the finding has its entry of work already
  'finding-not-ranked', // an observation, or what was looked for and not found
  'finding-not-confirmed', // details.number: it stands as suspected or not examined
  'decided', // the owner has decided on the choice
  'photo-empty',
  'photo-not-an-image', // details.name, details.found
  'photo-damaged', // details.name, details.why
  'photo-too-large', // details.megapixels, details.most
  'photo-bomb',
  'photo-is-drawing', // SVG
  'photo-unreadable', // details.reason
  'photo-decoder-gave-up', // details.reason: time | memory
  'photo-kind-not-read', // details.kind
  'photo-is-folder',
  'photo-paste-too-large', // details.most
  'token-spent',
  'report-not-ready', // details.missing: string[], details.decisionsOnly: boolean
  'statement-not-shown', // a decision without the words it was read back in
  'report-nothing-changed', // details.number, details.revision
  'report-nothing-to-print',
  'report-typesetting-failed', // details.message
  'file-unwritable', // details.path, details.reason
  'file-unreadable', // details.path, details.reason
  'not-our-pdf',
  'scenario-malformed', // details.issues
  'scenario-exists', // details.serial
  'calibration-zero-length', // the reference's two ends, or its stated size, are nothing
  'calibration-too-few-points', // details.fewest, details.given
  'calibration-points-collinear',
  'calibration-points-crossing', // clicked in another order than stated
  'calibration-not-ellipse', // the rim's points lie on no ellipse
  'calibration-without-plane', // nobody has said which face it is
  'calibration-of-another-photo',
  'calibration-straight-already', // a known length takes no perspective out: there is nothing to straighten
  'trace-too-short', // both clicks on one spot
  'mark-not-traced',
  'nothing-to-grow', // no patch with a border round the spot
  'mark-not-calibrated', // no size but in pixels
  'mark-without-size', // details.measure
  'card-not-found', // details.name
  'mark-beyond-horizon', // the calibrated plane does not reach so far
  'comparison-nothing-in-common', // two photos in which no same spot was found
  'comparison-too-few-points', // details.fewest, details.given
  'comparison-points-collinear', // matched points on one line, or on one spot
  'comparison-points-crossing', // two of the matched points are swapped
  'comparison-not-earlier', // the other photo is of no earlier visit of this machine
  'annotation-malformed', // details.reason, details.clause
  'annotation-of-another-photo',
] as const;
export type ErrorCode = (typeof errorCodes)[number];

/** What crosses the wire. `field` names the input the sentence should stand beside. */
export interface WireError {
  readonly code: ErrorCode;
  readonly details: Readonly<Record<string, unknown>>;
  readonly field?: string;
}

/** A refusal in the closed vocabulary. Bugs are other errors; the dispatcher turns those into `internal`. */
export class AppError extends Error {
  readonly code: ErrorCode;
  readonly details: Readonly<Record<string, unknown>>;
  readonly field: string | undefined;

  constructor(
    code: ErrorCode,
    details: Record<string, unknown> = {},
    options: { field?: string; cause?: unknown } = {},
  ) {
    super(`${code} ${JSON.stringify(details)}`, options.cause === undefined ? {} : { cause: options.cause });
    this.name = 'AppError';
    this.code = code;
    this.details = details;
    this.field = options.field;
  }

  toWire(): WireError {
    return { code: this.code, details: this.details, ...(this.field === undefined ? {} : { field: this.field }) };
  }
}
