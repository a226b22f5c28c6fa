import { methodOf } from '../../methods/index.ts';
import type { MethodCode } from '../../model/finding.ts';
import { limitsOfInspection } from '../../wording/report.ts';
import type { ReportContext } from '../context.ts';
import type { CoverageSection, ReportRow } from '../model.ts';
import { asSentence } from '../sentence.ts';

/** `Of 6 agreed items: 5 examined, 1 not examined, 0 not applicable.` */
function coverageLine({ record }: ReportContext): string {
  const { examined, notExamined, notApplicable } = record.standing.coverage;
  const all = examined + notExamined + notApplicable;
  if (all === 0)
    return 'No list of items was agreed. Only the parts named by the findings and readings were looked at.';
  return `Of ${all} agreed ${all === 1 ? 'item' : 'items'}: ${examined} examined, ${notExamined} not examined, ${notApplicable} not applicable.`;
}

function itemsOf(context: ReportContext): CoverageSection['items'] {
  const { scope, standing } = context.record;
  const unseen = new Map(standing.notLookedAt.map((item) => [item.path, item]));
  const agreed = scope
    .toSorted((a, b) => a.position - b.position)
    .map((item) => {
      const missed = unseen.get(item.path);
      const state =
        item.notApplicableBecause !== null ? 'not applicable' : missed === undefined ? 'examined' : 'not examined';
      const because = item.notApplicableBecause ?? missed?.because ?? '';
      return {
        item: context.place(item.path),
        state,
        because: state === 'not examined' && because === '' ? 'No reason is written down.' : asSentence(because),
        examined: state !== 'not examined',
      };
    });
  const paths = new Set(scope.map(({ path }) => path));
  const others = standing.notLookedAt
    .filter(({ path }) => !paths.has(path))
    .map(({ spoken, because }) => ({
      item: spoken,
      state: 'not examined',
      because: because === null ? 'No reason is written down.' : asSentence(because),
      examined: false,
    }));
  return [...agreed, ...others];
}

function methodsUsed({ record }: ReportContext): MethodCode[] {
  return [...new Set(record.findings.filter(({ binned }) => !binned).flatMap(({ methods }) => methods))];
}

export function coverage(context: ReportContext): CoverageSection {
  const used = methodsUsed(context);
  return {
    kind: 'coverage',
    heading: 'What was looked at, and what was not',
    line: coverageLine(context),
    columns: ['Agreed item', 'State', 'Why'],
    items: itemsOf(context),
    methodsHeading: 'What these methods cannot show',
    methods: used.map((code): ReportRow => {
      const { name, cannotSee } = methodOf(code);
      return { label: name, paragraphs: [asSentence(cannotSee)] };
    }),
    limits: [...(used.includes('V') ? [limitsOfInspection.eye] : []), limitsOfInspection.notExamined],
  };
}
