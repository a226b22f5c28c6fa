import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { AppliedScenario } from '../../../shared-lib/contract/scenario.ts';
import type { Scenario } from '../../../shared-lib/scenario/schema.ts';
import type { Context } from '../context.ts';
import { machineBySerial } from '../machines/queries.ts';
import { people } from '../shop/queries.ts';
import { applyVisit } from './apply-visit.ts';

const hours = (quantity: string | number): number => Number.parseFloat(String(quantity));

/** The people of the file, by its own ids; somebody of the same name is the same person. */
const takePeople = async ({ db, call }: Context, scenario: Scenario): Promise<Map<string, string>> => {
  const known = new Map(people(db).map(({ name, id }) => [name, id]));
  const ids = new Map<string, string>();
  for (const { id, name, trade = '' } of scenario.people) {
    ids.set(id, known.get(name) ?? (await call('person.add', { name, trade })).id);
  }
  return ids;
};

/** Only a shop that has no name yet takes the file's. */
const takeShop = async ({ call }: Context, { shop }: Scenario): Promise<void> => {
  const state = await call('app.state', {});
  if (state.shop.name !== '') return;
  await call('shop.change', {
    name: shop.name,
    address: shop.address ?? '',
    units: shop.units,
    timeZone: shop.timeZone,
    paper: shop.units === 'us' ? 'us-letter' : 'a4',
  });
};

/**
 * Enters a scenario's machine and visits as a mechanic would: one operation after the other, each in the journal.
 *
 * @param folder  where the file's pictures lie
 * @throws AppError 'scenario-exists' when a machine of that kind and serial stands here already; else what an operation refuses
 */
export const applyScenario = async (caller: Context, scenario: Scenario, folder: string): Promise<AppliedScenario> => {
  const context: Context = {
    ...caller,
    call: (name, input, as) => caller.call(name, input, { windowId: `file ${scenario.id}`, ...as }),
  };
  const { plate, layout, meters, fittedParts = [] } = scenario.machine;
  if (machineBySerial(context.db, plate.kind, plate.serial))
    throw new AppError('scenario-exists', { serial: plate.serial });
  await takeShop(context, scenario);
  const personIds = await takePeople(context, scenario);
  const [first, ...replaced] = meters;
  const { owner } = scenario;
  const page = await context.call('machine.add', {
    plate,
    layout,
    owner: { name: owner.name, kind: owner.kind, capacity: owner.capacity, place: owner.place, note: owner.note },
    meter: { name: 'hour meter', offsetHours: first ? hours(first.offset) : 0 },
  });
  const machineId = page.machine.id;
  const meterIds = new Map<string, string>();
  for (const [index, meter] of [first, ...replaced].entries()) {
    if (!meter) continue;
    const limits = { from: meter.from ?? null, until: meter.until ?? null, dead: meter.dead ?? false };
    const own = page.meters[0]?.id;
    if (index === 0 && own !== undefined) {
      await context.call('meter.change', { id: own, ...limits });
      meterIds.set(meter.id, own);
    } else {
      const added = await context.call('meter.add', {
        machineId,
        name: 'hour meter',
        offsetHours: hours(meter.offset),
        ...limits,
      });
      meterIds.set(meter.id, added.id);
    }
  }
  const applied = {
    visits: new Map<string, string>(),
    findings: new Map<string, string>(),
    leftOut: new Set<string>(),
  };
  for (const visit of scenario.visits) {
    await applyVisit({ context, folder, machineId, personIds, meterIds, applied }, visit);
  }
  for (const part of fittedParts) {
    await context.call('part.fit', {
      machineId,
      path: part.at,
      kind: part.kind,
      fittedVisitId: applied.visits.get(part.visit) ?? null,
      fittedHours: part.hours === undefined ? null : hours(part.hours),
    });
  }
  return {
    machineId,
    visits: Object.fromEntries(applied.visits),
    findings: Object.fromEntries(applied.findings),
    leftOut: [...applied.leftOut],
  };
};
