import type { ReportContext } from '../context.ts';
import type { ReportSection } from '../model.ts';
import { cautions } from './cautions.ts';
import { chains } from './chains.ts';
import { choices } from './choices.ts';
import { complaint } from './complaint.ts';
import { coverage } from './coverage.ts';
import { decided } from './decided.ts';
import { diagrams } from './diagrams.ts';
import { findings } from './findings.ts';
import { followUp } from './follow-up.ts';
import { identity } from './identity.ts';
import { pageOne } from './page-one.ts';
import { photoIndex } from './photo-index.ts';
import { readings } from './readings.ts';
import { since } from './since.ts';
import { summary } from './summary.ts';
import { suspected } from './suspected.ts';
import { handOver, workDone } from './work.ts';

/** In the order of the pages. A section that has nothing to say is null, and absent. */
export const sections: readonly ((context: ReportContext) => ReportSection | null)[] = [
  pageOne,
  cautions,
  complaint,
  since,
  summary,
  chains,
  suspected,
  diagrams,
  findings,
  readings,
  coverage,
  choices,
  decided,
  workDone,
  handOver,
  followUp,
  photoIndex,
  identity,
];
