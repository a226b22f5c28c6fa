import { describe, expect, it } from 'vitest';
import { chosenOf } from '../../../../shared-lib/choices/choices-of.ts';
import { inOrderOfWhatStays } from '../../../../shared-lib/choices/order.ts';
import type { Decision } from '../../../../shared-lib/choices/records.ts';
import { readBack, type Statement, statementOnFinding } from '../../../../shared-lib/choices/statement.ts';
import type { ChoiceView } from '../../../../shared-lib/contract/choices.ts';
import type { Standing } from '../../../../shared-lib/contract/standing.ts';
import { aFinding } from '../../../support/ranking/a-finding.ts';

const decision = (choiceId: string, kind: Decision['decision']) => ({ choiceId, decision: kind }) as Decision;

describe('which choice was taken', () => {
  it.each([
    ['none decided', [], null],
    ['declined', [decision('a', 'declined')], null],
    ['accepted', [decision('a', 'accepted')], 'a'],
    ['with a change', [decision('a', 'accepted-with-changes')], 'a'],
    ['another one later', [decision('a', 'accepted'), decision('b', 'accepted')], 'b'],
    ['given up later', [decision('a', 'accepted'), decision('a', 'declined')], null],
    ['the other declined', [decision('a', 'accepted'), decision('b', 'declined')], 'a'],
  ] as const)('%s', (_, decisions, chosen) => {
    expect(chosenOf(decisions)).toBe(chosen);
  });
});

it('what leaves most stands first, the worst tier counting most', () => {
  const choice = (name: string, tiers: readonly number[]) =>
    ({ name, left: tiers.map((tier) => ({ tier })) }) as unknown as ChoiceView;
  const choices = [
    choice('all', []),
    choice('many small', [3, 3, 4]),
    choice('one bad', [0]),
    choice('bad and small', [0, 3]),
  ];
  expect(inOrderOfWhatStays(choices).map(({ name }) => name)).toEqual([
    'bad and small',
    'one bad',
    'many small',
    'all',
  ]);
});

it('a statement says the mechanic\u2019s own words once, also where they are all that the finding is called by', () => {
  const reader = { by: 'Ada Quill', capacity: 'owner', date: '2026-06-08', photos: [], howTold: '' };
  const toldOf = (title: string, words: string) => {
    const finding = aFinding(1, { words });
    const line = { findingId: finding.id, title };
    return statementOnFinding(finding, { lines: [line], unranked: [] } as unknown as Standing, reader).told[0];
  };
  expect(toldOf('Boom: cracked at the toe', 'cracked at the toe')?.match(/cracked at the toe/gi)).toHaveLength(1);
  expect(toldOf('Boom: crack 14 mm', 'At the toe of the weld.')).toContain('crack 14 mm. At the toe of the weld.');
});

describe('the statement as it is kept', () => {
  const statement: Statement = {
    shown: 'I, Ada Quill, was shown photo 4 on 8 June 2026.',
    told: ['I was told of finding 1.'],
    consequence: 'If it is left: it bursts.',
    advised: 'I was advised to have it replaced.',
    opens: 'I choose',
    endings: [
      { decision: 'accepted', words: 'to have it replaced', asks: null },
      { decision: 'accepted-with-changes', words: 'to have it replaced, but', asks: 'with what change' },
      { decision: 'deferred', words: 'to put it off until', asks: 'until when' },
      { decision: 'declined', words: 'to leave it as it is', asks: null },
    ],
    understood: '',
    closing: '',
  };
  it.each([
    ['accepted', '', 'I choose to have it replaced.'],
    ['accepted-with-changes', 'not before Friday', 'I choose to have it replaced, but not before Friday.'],
    ['deferred', 'the spring', 'I choose to put it off until the spring.'],
    ['deferred', '', 'I choose to put it off.'],
    ['declined', '', 'I choose to leave it as it is.'],
    ['refused-by-mechanic', 'plating over holes', 'The mechanic refuses: plating over holes.'],
  ] as const)('%s', (kind, completed, sentence) => {
    expect(readBack(statement, kind, completed).split('\n')).toContain(sentence);
  });
});
