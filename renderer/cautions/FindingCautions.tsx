import { cautionsForFinding } from '../../shared-lib/cautions/cautions-for.ts';
import { speakRemains } from '../../shared-lib/cautions/speak-because.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import { workedOn } from '../../shared-lib/work/after-work.ts';
import { CautionList } from './CautionList.tsx';

interface FindingCautionsProps {
  readonly finding: Finding;
  readonly record: VisitRecord;
}

/** What to mind at this part, as soon as the card says where and what; after work on it, what of that remains, and why. */
export function FindingCautions({ finding, record }: FindingCautionsProps) {
  const { layout } = record.layout;
  const { work, readings, proofs } = record;
  if (work === undefined) return <CautionList cautions={cautionsForFinding(finding, layout)} />;
  const called = cautionsForFinding(finding, layout, { work, readings, proofs });
  const worked = workedOn(work, readings).get(finding.id);
  const wasCalled = cautionsForFinding(finding, layout).length > 0;
  if (called.length === 0 && wasCalled)
    return <p className="soft">Mended in this visit: what had to be minded here is over.</p>;
  return <CautionList cautions={called} because={worked && `This finding is ${speakRemains(worked)}.`} />;
}
