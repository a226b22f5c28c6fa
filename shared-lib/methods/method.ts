import type { MethodCode } from '../model/finding.ts';

export interface Method {
  readonly code: MethodCode;
  /** As a button says it. */
  readonly name: string;
  /** After 'not found' or 'found': 'by penetrant'. */
  readonly by: string;
  readonly sees: string;
  readonly cannotSee: string;
  /** What has to be written down for the result to be worth anything. */
  readonly record: string;
}
