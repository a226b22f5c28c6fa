import { describe, expect, it } from 'vitest';
import { type AnswerKey, isTouched } from '../../../../renderer/api/touched.ts';

const changed = (part: { visitIds?: string[]; machineIds?: string[]; types?: string[] }) => ({
  event: 'changed' as const,
  records: (part.types ?? []).map((type) => ({ type, id: 'x' })),
  visitIds: part.visitIds ?? [],
  machineIds: part.machineIds ?? [],
});
const inVisit = changed({ types: ['finding'], visitIds: ['v1'], machineIds: ['m1'] });
const atMachine = changed({ types: ['machine'], machineIds: ['m1'] });
const inShop = changed({ types: ['person'] });

describe('a change asks again for what it touches', () => {
  const visit: AnswerKey = ['visit.get', { id: 'v1' }];
  const otherVisit: AnswerKey = ['visit.get', { id: 'v2' }];
  const page: AnswerKey = ['machine.page', { id: 'm1' }];
  const otherPage: AnswerKey = ['machine.page', { id: 'm2' }];
  const pageAnswer = { visits: [{ visit: { id: 'v1' } }] };
  const otherAnswer = { visits: [{ visit: { id: 'v2' } }] };

  it.each<[AnswerKey, unknown, ReturnType<typeof changed>, boolean]>([
    [visit, { machine: { id: 'm1' } }, inVisit, true],
    [otherVisit, { machine: { id: 'm2' } }, inVisit, false],
    [otherVisit, { machine: { id: 'm1' } }, atMachine, true],
    [page, pageAnswer, inVisit, true],
    [otherPage, otherAnswer, inVisit, false],
    [otherPage, undefined, inVisit, true],
    [['machine.floor', {}], [], inVisit, true],
    [['undo.state', { visitId: 'v1' }], {}, inVisit, true],
    [['undo.state', { visitId: 'v2' }], {}, changed({ types: ['mark'], visitIds: ['v1'] }), false],
    [['standing.get', { visitId: 'v1' }], {}, atMachine, true],
    [['app.state', {}], {}, inVisit, false],
    [['app.state', {}], {}, inShop, true],
    [['report.preview', { visitId: 'v1' }], {}, inShop, true],
    [['finding.lastUsed', {}], {}, inVisit, true],
    [['finding.lastUsed', {}], {}, inShop, false],
    [['visit.get', { id: 'v1' }], {}, inShop, false],
  ])('%j with %j after %j: %s', (key, answer, change, touched) => {
    expect(isTouched(key, answer, change)).toBe(touched);
  });

  it('asks again when in doubt', () => {
    expect(isTouched(['shell.showFile', {}], {}, inVisit)).toBe(true);
  });
});
