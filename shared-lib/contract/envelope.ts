import type { WireError } from './errors.ts';
import type { RecorderEvent } from './events.ts';

/** Window to recorder, by way of the shell. `windowId` is stamped by the shell: undo's scope is a window. */
export interface Call {
  readonly id: number;
  readonly windowId: string;
  readonly name: string;
  readonly input: unknown;
}

export type Reply =
  | { readonly id: number; readonly ok: true; readonly output: unknown }
  | { readonly id: number; readonly ok: false; readonly error: WireError };

/** Shell to recorder: a path that a dialog, a drop or the command line named, under a one-use token. */
export interface OfferedPath {
  readonly token: string;
  readonly path: string;
  readonly for: 'read' | 'write';
}

/** Shell to recorder: what photo:// was asked for. */
export interface PhotoRequest {
  readonly id: number;
  readonly url: string;
}
/** Where the recorder located it inside the store; null when it serves no such thing. */
export interface PhotoAnswer {
  readonly id: number;
  readonly path: string | null;
  readonly mediaType: string | null;
}

export type ToRecorder =
  | { readonly kind: 'call'; readonly call: Call }
  | { readonly kind: 'offer'; readonly offer: OfferedPath }
  | { readonly kind: 'photo'; readonly request: PhotoRequest }
  | { readonly kind: 'stop' };

export type FromRecorder =
  | { readonly kind: 'ready' }
  | { readonly kind: 'cannot-open'; readonly error: WireError }
  | { readonly kind: 'reply'; readonly reply: Reply }
  | { readonly kind: 'event'; readonly event: RecorderEvent }
  | { readonly kind: 'photo'; readonly answer: PhotoAnswer };
