import type { DefectId } from '../defects/index.ts';
import type { FindingFact, MethodCode } from '../model/finding.ts';
import type { Layout } from '../model/layout.ts';
import type { Verdict } from '../model/reading.ts';
import type { ComponentClass } from '../parts/component.ts';
import type { SignalWord } from './signal-word.ts';
import type { WorkStepKind } from './work-step.ts';

/** Some parts of a machine; what is listed in each field is an alternative, and all fields must agree. */
export interface PlaceRule {
  readonly classes?: readonly ComponentClass[];
  readonly notClasses?: readonly ComponentClass[];
  /** Paths: the part or anything below it. */
  readonly parts?: readonly string[];
  /** Function words of hydraulic cylinders and lines: `hoist`. */
  readonly functions?: readonly string[];
  /** A part that serves some actuator, not a suction or return line. */
  readonly ofActuator?: true;
}

/** A condition that is written down, looked for or not; what was looked for and not found calls only by its method. */
export interface FindingClause {
  readonly by: 'finding';
  readonly at?: PlaceRule;
  readonly defects?: readonly DefectId[];
  readonly facts?: readonly FindingFact[];
  readonly method?: MethodCode;
  /** Gets worse while running, and may fail at the next start. */
  readonly dueNow?: true;
  /** Not taken away by the chosen option. */
  readonly leftOpen?: true;
}

/** A sheet that is filled in. With verdicts it speaks of the machine and belongs in the report too, else of the work only. */
export interface SheetClause {
  readonly by: 'sheet';
  readonly sheets: readonly string[];
  readonly verdicts?: readonly Verdict[];
  readonly at?: PlaceRule;
}

/** Work done in the visit, or that the chosen option needs. */
export interface StepClause {
  readonly by: 'step';
  readonly steps: readonly WorkStepKind[];
  readonly at?: PlaceRule;
  readonly machineHas?: PlaceRule;
  /** Whoever does the work is told, not whoever reads the report. */
  readonly benchOnly?: true;
}

/** What the machine is, or has, whatever is done to it. */
export interface MachineClause {
  readonly by: 'machine';
  readonly has?: PlaceRule;
  readonly articulated?: true;
  readonly fuels?: readonly Layout['engine']['fuel'][];
}

export type CautionClause = FindingClause | SheetClause | StepClause | MachineClause;

export type Audience = 'bench' | 'owner' | 'both';

export interface Caution {
  readonly id: string;
  readonly word: SignalWord;
  /** What can happen, in a few words. */
  readonly hazard: string;
  /** At most thirty words. */
  readonly text: string;
  readonly audience: Audience;
  /** Public documents, or `common practice`. */
  readonly sources: readonly string[];
  /** Its text speaks until a test after the repair: mended alone does not end it. */
  readonly untilTested?: true;
  /** Alternatives: any one of them calls it. */
  readonly calledBy: readonly CautionClause[];
}

/** Known in the trade; no public document stands behind it. */
export const commonPractice = 'common practice';
