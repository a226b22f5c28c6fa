import { z } from 'zod';
import { ArrivalView, EarlierWork, FluidReceived, type Intake } from '../model/intake.ts';
import { step } from './operation.ts';

const id = z.string();
const work = EarlierWork.omit({ id: true });

/** How a machine was received. Each answers with all of it. */
export const intakeOperations = {
  'earlierWork.add': step<Intake>()(
    work.extend({
      visitId: id,
      place: work.shape.place.default(null),
      did: work.shape.did.default('changed'),
      byWhom: work.shape.byWhom.default(''),
      whenDone: work.shape.whenDone.default(''),
    }),
  ),
  'earlierWork.change': step<Intake>()(work.partial().extend({ id })),
  'earlierWork.remove': step<Intake>()(z.strictObject({ id })),
  /** A fluid is noted once; noted again it is put right. */
  'fluid.note': step<Intake>()(
    FluidReceived.omit({ id: true }).partial().required({ fluid: true }).extend({ visitId: id }),
  ),
  'fluid.remove': step<Intake>()(z.strictObject({ visitId: id, fluid: FluidReceived.shape.fluid })),
  /** The photo that shows a view of the walk round; null takes it off. */
  'arrival.show': step<Intake>()(z.strictObject({ visitId: id, view: ArrivalView, shotId: id.nullable() })),
};
