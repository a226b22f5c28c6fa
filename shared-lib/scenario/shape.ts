import { z } from 'zod';
import { CalibrationInput } from '../calibration/input.ts';
import { CostLine, Money } from '../choices/records.ts';
import {
  Certainty,
  DamageClass,
  FindingAction,
  FindingFact,
  FindingState,
  MethodCode,
  Safety,
  Urgency,
} from '../model/finding.ts';
import { EarlierWork, FluidReceived } from '../model/intake.ts';
import { Layout } from '../model/layout.ts';
import { ShapeName } from '../model/mark.ts';
import { QuantityOrigin } from '../model/quantity.ts';
import { Verdict } from '../model/reading.ts';
import { Use } from '../model/visit.ts';
import { HandOver, Outcome } from '../work/records.ts';

const text = z.string().min(1);
const word = z.string().regex(/^[A-Za-z][A-Za-z0-9-]*$/);
const findingId = z.string().regex(/^[FO]\d+$/);
const location = z
  .string()
  .regex(
    /^[A-Z0-9][A-Z0-9-]*(\.[A-Za-z0-9]+)*(\/[A-Z0-9][A-Z0-9-]*(\.[A-Za-z0-9]+)*)*(@[a-z]+=[^;@]+(;[a-z]+=[^;@]+)*)?$/,
  );
/** A bare number, or a number (or a list with slashes) with its unit, or a class of leak. */
const quantity = z.union([
  z.number(),
  z.string().regex(/^-?\d+(\.\d+)?(\/-?\d+(\.\d+)?)* \S.*$/),
  z.string().regex(/^-?\d+(\.\d+)?$/),
  z.enum(['I', 'II', 'III']),
]);
const tierWord = z.enum(['T0', 'T1', 'T2', 'T3', 'T4']);
const disposition = z.enum(['fixed', 'partly', 'left', 'made-safe', 'unknown']);
const sheet = z.string().regex(/^MS-(0[1-9]|1\d|2[0-8])$/);

const steps = z.array(
  z.strictObject({
    step: z.enum([
      'lift-off',
      'open-engine',
      'open-hydraulic',
      'open-fuel',
      'drain-coolant',
      'pressure-test',
      'clean',
      'hone',
      'grind',
      'core-plug',
      'weld',
      'wheel-off',
      'electrics',
      'battery',
      'spring',
      'grease-tensioner',
      'run',
      'run-indoors',
      'climb',
    ]),
    at: location.optional(),
  }),
);

const leadsTo = z.union([
  findingId,
  z.strictObject({ id: findingId, certainty: Certainty, evidence: z.array(word).optional() }),
]);

export const ScenarioFinding = z
  .strictObject({
    id: findingId,
    kind: z.enum(['condition', 'observation']),
    found: z.iso.date().optional(),
    track: z
      .string()
      .regex(/^V\d+\/F\d+$/)
      .optional(),
    /** A defect id; that it is one we know is asked when the finding is made. */
    defect: z.string().optional(),
    locations: z.array(location).min(1),
    words: text,
    state: FindingState.optional(),
    methods: z.array(MethodCode).optional(),
    quantities: z.record(z.string(), quantity).optional(),
    safety: Safety.nullable().optional(),
    urgency: Urgency.optional(),
    runWorse: z.boolean().optional(),
    damageClass: DamageClass.optional(),
    leadsTo: z.array(leadsTo).optional(),
    loopStart: z.boolean().optional(),
    facts: z.array(FindingFact).optional(),
    namedConditionDeclinedBecause: text.optional(),
    notExaminedBecause: text.optional(),
    shownBy: z.array(z.string().regex(/^(photo|R\d+)$/)).optional(),
    origin: QuantityOrigin.optional(),
    ifLeft: text.optional(),
    watchFor: text.optional(),
    action: FindingAction.optional(),
    actionWords: text.optional(),
    doNotOperate: z.boolean().optional(),
    doNotRun: z.boolean().optional(),
    /** Still in the mechanic's hand: judgements may be missing. */
    unfinished: z.literal(true).optional(),
  })
  .superRefine((finding, context) => {
    const needs = (key: keyof typeof finding) => {
      if (finding[key] === undefined) {
        context.addIssue({ code: 'custom', path: [key], message: `a ${finding.kind} needs it` });
      }
    };
    if (finding.kind === 'observation') {
      for (const key of ['defect', 'safety'] as const) {
        if (finding[key] !== undefined) {
          context.addIssue({ code: 'custom', path: [key], message: 'an observation has place and words only' });
        }
      }
      return;
    }
    for (const key of ['defect', 'state', 'methods'] as const) needs(key);
    if (finding.state !== 'none-found' && finding.unfinished !== true) {
      for (const key of ['safety', 'urgency', 'runWorse', 'damageClass'] as const) needs(key);
    }
  });
export type ScenarioFinding = z.infer<typeof ScenarioFinding>;

const limit = z.strictObject({
  min: quantity.optional(),
  max: quantity.optional(),
  badBelow: quantity.optional(),
  badAbove: quantity.optional(),
  source: z.enum(['maker', 'machine-shop', 'common-practice', 'none']),
  page: text.optional(),
});

const instant = z.iso.datetime({ offset: true });

export const ScenarioReading = z.strictObject({
  id: z.string().regex(/^R\d+$/),
  sheet,
  at: location,
  inputs: z.record(z.string(), z.union([quantity, z.string()])).optional(),
  conditions: z.record(z.string(), z.string()).optional(),
  remark: text.optional(),
  /** Where the day of the visit is not when it was taken: `2026-06-10T09:30:00+02:00`. */
  takenAt: instant.optional(),
  results: z
    .array(
      z.strictObject({
        of: text,
        value: quantity.optional(),
        standard: quantity.optional(),
        seen: z.boolean().optional(),
        limit: limit.optional(),
        u: quantity.optional(),
        uFrom: text.optional(),
        verdict: Verdict,
        printed: quantity.optional(),
        printedVerdict: z.enum(['pass', 'marginal', 'watch', 'fail']).optional(),
      }),
    )
    .min(1),
});
export type ScenarioReading = z.infer<typeof ScenarioReading>;

const dispositionAfter = z.strictObject({
  is: disposition,
  after: z
    .strictObject({
      safety: Safety.nullable().optional(),
      urgency: Urgency.optional(),
      runWorse: z.boolean().optional(),
      damageClass: DamageClass.optional(),
    })
    .optional(),
  why: text.optional(),
});

export const ScenarioChoice = z.strictObject({
  name: text,
  chosen: z.literal(true).optional(),
  dispositions: z.record(findingId, z.union([disposition, dispositionAfter])),
  steps: steps.optional(),
  costs: z.array(CostLine.omit({ id: true })).optional(),
});
export type ScenarioChoice = z.infer<typeof ScenarioChoice>;

/** A photo of the visit; points are pixels of the upright picture. */
export const ScenarioShot = z.strictObject({
  file: text,
  component: location.optional(),
  caption: z.string().optional(),
  seenFrom: z.string().optional(),
  /** As typed, with a zone or in the shop's: `2026-06-08T10:42`. */
  takenAt: text.optional(),
  /** How one face of it is scaled; all its marks lie in that face. */
  scale: CalibrationInput.optional(),
  marks: z
    .array(
      z.strictObject({
        finding: findingId.optional(),
        shape: ShapeName,
        points: z.array(z.tuple([z.number(), z.number()])).min(1),
      }),
    )
    .optional(),
});
export type ScenarioShot = z.infer<typeof ScenarioShot>;

export const ScenarioVisit = z.strictObject({
  id: z.string().regex(/^V\d+$/),
  date: z.iso.date(),
  by: word,
  meter: z.strictObject({ id: word, reading: quantity, estimate: z.boolean().optional() }),
  complaint: text,
  use: Use,
  conditions: z.object({ altitude: quantity }).catchall(z.string()),
  scope: z.array(
    z.strictObject({
      item: location,
      notExaminedBecause: text.optional(),
      notApplicableBecause: text.optional(),
    }),
  ),
  findings: z.array(ScenarioFinding),
  readings: z.array(ScenarioReading).optional(),
  suspicions: z
    .array(
      z.strictObject({
        id: z.string().regex(/^S\d+$/),
        what: text,
        at: location.optional(),
        /** The defect that is meant, by its id. */
        defect: text.optional(),
        closed: text.optional(),
        evidence: z.array(
          z.strictObject({
            ref: z.string().regex(/^[FOR]\d+$/),
            bears: z.enum(['for', 'against', 'cannot tell']),
            because: text.optional(),
          }),
        ),
      }),
    )
    .optional(),
  /** How the machine was received. */
  received: z
    .strictObject({
      earlierWork: z.array(EarlierWork.omit({ id: true, place: true }).partial().required({ what: true })).optional(),
      fluids: z.array(FluidReceived.omit({ id: true }).partial().required({ fluid: true })).optional(),
    })
    .optional(),
  steps: steps.optional(),
  money: Money.optional(),
  choices: z.array(ScenarioChoice).optional(),
  decisions: z
    .array(
      z.strictObject({
        finding: findingId,
        decision: z.enum(['accepted', 'accepted-with-changes', 'declined', 'deferred', 'refused-by-mechanic']),
        until: text.optional(),
        words: text.optional(),
        by: text.optional(),
      }),
    )
    .optional(),
  shots: z.array(ScenarioShot).optional(),
  /** What was done after the decision, and what showed that it holds. */
  work: z
    .array(
      z.strictObject({
        finding: findingId.optional(),
        words: text,
        at: instant,
        outcome: Outcome.optional(),
        because: text.optional(),
        parts: z.array(z.strictObject({ words: text, amount: text.optional() })).optional(),
        shownBy: z.array(z.string().regex(/^R\d+$/)).optional(),
      }),
    )
    .optional(),
  handOver: HandOver.partial().optional(),
  /** The machine has left the shop again, that day or at a time that is given. */
  left: z.union([z.boolean(), instant]).optional(),
});
export type ScenarioVisit = z.infer<typeof ScenarioVisit>;

const placed = z.array(z.strictObject({ id: findingId, tier: tierWord }));

const Expected = z.strictObject({
  visit: z.string(),
  order: z.array(z.strictObject({ id: findingId, tier: tierWord, named: word.optional() })),
  choices: z.array(
    z.strictObject({
      choice: text,
      left: placed,
      highestLevelLeft: z.enum(['High', 'Serious', 'Medium', 'Low', 'none']),
      doNotOperateLeft: z.array(findingId),
      willReturn: z.array(z.strictObject({ finding: findingId, rootsLeft: z.array(findingId).min(1) })),
    }),
  ),
  coverage: z.strictObject({ examined: z.int(), notExamined: z.int(), notApplicable: z.int() }),
  undecided: z.array(findingId),
  carriedOver: z.array(z.record(z.string(), z.unknown())).optional(),
  cautions: z.array(z.record(z.string(), z.unknown())),
  handMadeOnly: z.array(z.record(z.string(), z.unknown())).optional(),
});

/** One file: one machine, its visits, and what the record must make of them. */
export const ScenarioShape = z.strictObject({
  $schema: z.string().optional(),
  format: z.literal('scenario/1'),
  id: word,
  title: text,
  from: text.optional(),
  shop: z.strictObject({
    name: text,
    address: text.optional(),
    timeZone: z.string().regex(/^[+-]\d{2}:\d{2}$/),
    units: z.enum(['metric', 'us']),
  }),
  people: z.array(z.strictObject({ id: word, name: text, trade: text.optional() })).min(1),
  owner: z.strictObject({
    name: text,
    kind: z.enum(['person', 'company']),
    capacity: text,
    place: text.optional(),
    note: text.optional(),
  }),
  machine: z.strictObject({
    plate: z.strictObject({ kind: text, serial: text, year: z.string().optional() }),
    layout: Layout,
    meters: z
      .array(
        z.strictObject({
          id: word,
          offset: quantity,
          from: z.iso.date().optional(),
          until: z.iso.date().optional(),
          dead: z.boolean().optional(),
        }),
      )
      .min(1),
    fittedParts: z
      .array(
        z.strictObject({
          at: location,
          visit: word,
          hours: quantity.optional(),
          kind: z.enum(['new', 'used', 'donor']),
          removed: word.optional(),
        }),
      )
      .optional(),
  }),
  visits: z.array(ScenarioVisit).min(1),
  /** Only the test files carry it. */
  expect: z.strictObject({ visits: z.array(Expected).min(1) }).optional(),
});
export type ScenarioShape = z.infer<typeof ScenarioShape>;
