import { cautionsForFinding } from '../../shared-lib/cautions/cautions-for.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import type { Layout } from '../../shared-lib/model/layout.ts';
import { CautionList } from './CautionList.tsx';

interface FindingCautionsProps {
  readonly finding: Finding;
  readonly layout: Layout;
}

/** What to mind at this part, as soon as the card says where and what. */
export function FindingCautions({ finding, layout }: FindingCautionsProps) {
  return <CautionList cautions={cautionsForFinding(finding, layout)} />;
}
