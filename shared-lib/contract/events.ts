import type { OfferedFile } from './shots.ts';

/** What the recorder tells every window, unasked. */
export type RecorderEvent =
  | {
      readonly event: 'changed';
      readonly records: readonly { readonly type: string; readonly id: string }[];
      readonly visitIds: readonly string[];
      readonly machineIds: readonly string[];
    }
  | {
      readonly event: 'import';
      readonly jobId: string;
      readonly visitId: string;
      readonly done: number;
      readonly of: number;
      readonly file: OfferedFile | null;
      readonly ended: 'no' | 'complete' | 'stopped';
    }
  /** Told by the shell. `since` is when the recorder was last heard of. */
  | {
      readonly event: 'recorder';
      readonly state: 'running' | 'restarted' | 'gone';
      readonly atMs: number;
      readonly reason: string | null;
    }
  | { readonly event: 'damage'; readonly what: string }
  /** A menu item of the shell: the window runs the command of that name. */
  | { readonly event: 'command'; readonly name: string };
