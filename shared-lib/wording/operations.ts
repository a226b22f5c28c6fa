import { type OperationName, operations } from '../contract/operations.ts';

/**
 * What was done, as a noun phrase that follows 'Undo: ' and stands in the journal. Only what changes the record has one.
 */
const names: Partial<Readonly<Record<OperationName, string>>> = {
  'app.begin': 'the shop opened',
  'shop.change': "the shop's particulars",
  'person.add': 'a person added',
  'person.change': "a person's particulars",
  'person.switch': 'who works here',
  'machine.add': 'a machine taken in',
  'machine.change': 'the plate',
  'machine.setLayout': 'the layout',
  'machine.setOwner': 'the owner',
  'owner.change': "the owner's particulars",
  'meter.add': 'a meter',
  'meter.change': 'the meter',
  'part.fit': 'a part fitted',
  'part.change': 'a fitted part, changed',
  'part.strike': 'a fitted part, struck off',
  'part.remove': 'a part taken off',
  'visit.open': 'a visit opened',
  'visit.change': "the visit's particulars",
  'scope.add': 'an item to look at',
  'scope.change': 'an item to look at, changed',
  'scope.remove': 'an item to look at, taken off',
  'shot.take': 'photos taken in',
  'shot.paste': 'a photo pasted',
  'shot.stopTaking': 'taking in stopped',
  'shot.change': "a photo's particulars",
  'shot.bin': 'a photo put in the bin',
  'shot.restore': 'a photo taken out of the bin',
  'camera.setClock': "the camera's clock",
  'calibration.add': 'a scale set',
  'mark.trace': 'a crack traced',
  'mark.retrace': 'a trace led another way',
  'mark.add': 'a mark drawn',
  'mark.change': 'a mark changed',
  'mark.remove': 'a mark removed',
  'comparison.keep': 'two photos laid over each other',
  'comparison.remove': 'two photos taken apart',
  'finding.add': 'a finding written',
  'finding.change': 'a finding changed',
  'finding.bin': 'a finding put in the bin',
  'finding.carry': 'an earlier finding taken up',
  'return.answer': 'what became of an earlier finding',
  'finding.restore': 'a finding taken out of the bin',
  'finding.supersede': 'a finding superseded',
  'finding.link': 'two findings joined',
  'finding.changeLink': 'what a link rests on',
  'finding.unlink': 'two findings parted',
  'finding.showBy': 'a finding shown by a photo',
  'finding.unshow': 'a photo taken off a finding',
  'finding.move': 'a line of the standing moved',
  'reading.record': 'a reading written down',
  'reading.fill': 'a sheet begun',
  'reading.change': 'a sheet changed',
  'reading.remove': 'a reading taken off',
  'limit.remember': 'a limit of the machine',
  'instrument.add': 'an instrument',
  'suspicion.add': 'a suspicion written',
  'suspicion.change': 'a suspicion, put in other words',
  'suspicion.find': 'a suspicion found to be so',
  'suspicion.close': 'a suspicion given up or taken up',
  'suspicion.bear': 'what bears on a suspicion',
  'visitStep.add': 'a step of the work',
  'visitStep.remove': 'a step of the work, taken off',
  'money.set': 'currency and tax',
  'choice.add': 'a repair choice written',
  'choice.change': 'a repair choice changed',
  'choice.remove': 'a repair choice taken off',
  'choice.dispose': 'what a choice does to a finding',
  'choice.addStep': 'a step of a choice',
  'choice.removeStep': 'a step of a choice, taken off',
  'choice.addCost': 'a line of the cost',
  'choice.changeCost': 'a line of the cost, changed',
  'choice.removeCost': 'a line of the cost, taken off',
  'decision.take': "the owner's decision",
  'report.issue': 'a report issued',
  'scenario.apply': 'a case taken in',
  'undo.undo': 'taken back',
  'undo.redo': 'brought back',
};

const byName: ReadonlyMap<string, string> = new Map(Object.entries(names));

/** Names that change the record and so need words; the test asks for each. */
export const namesThatChange: readonly string[] = Object.entries(operations)
  .filter(([, operation]) => operation.effect !== 'none')
  .map(([name]) => name);

/** The words for one operation of the journal. An older or newer journal may hold names that are not known here. */
export function operationWords(name: string): string {
  return byName.get(name) ?? 'the last change';
}
