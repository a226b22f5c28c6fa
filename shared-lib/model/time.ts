import { z } from 'zod';

/** An instant, the wall clock it was read on, and who says so. */
export const Moment = z.strictObject({
  /** UTC milliseconds. */
  atMs: z.int(),
  /** Minutes east of UTC. */
  zoneOffsetMin: z
    .int()
    .min(-14 * 60)
    .max(14 * 60),
  source: z.enum(['camera', 'camera-corrected', 'typed', 'clock', 'file']),
});
export type Moment = z.infer<typeof Moment>;
