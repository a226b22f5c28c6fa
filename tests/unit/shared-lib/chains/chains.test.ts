import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingsIn, drawStory } from '../../../../shared-lib/chains/draw.ts';
import { storiesOf } from '../../../../shared-lib/chains/stories.ts';
import { evidenceWords, tellStory } from '../../../../shared-lib/chains/tell.ts';
import type { Finding, FindingLink } from '../../../../shared-lib/model/finding.ts';
import { linksThatClose, loopsAmong } from '../../../../shared-lib/ranking/break-loops.ts';
import { standingOf } from '../../../../shared-lib/ranking/standing.ts';
import { aFinding, noUse, plainLayout } from '../../../support/ranking/a-finding.ts';

const link = (from: number, to: number, differs: Partial<FindingLink> = {}): FindingLink => ({
  id: `${from}-${to}`,
  fromId: `f${from}`,
  toId: `f${to}`,
  certainty: 'confirmed',
  join: 'and',
  evidence: '',
  ...differs,
});

const recordOf = (findings: readonly Finding[], links: readonly FindingLink[]) => {
  const input = { visit: { use: noUse }, layout: plainLayout, findings, links, proofs: [], scope: [], readings: [] };
  return {
    findings,
    links,
    readings: [],
    layout: { id: 'l1', machineId: 'm1', version: 1, layout: plainLayout },
    standing: standingOf(input),
  };
};

const named = (number: number, words: string, differs: Partial<Finding> = {}) =>
  aFinding(number, { defect: null, words, locations: [], state: 'suspected', ...differs });

/**
 * The handbook's first typical chain (chapter 6.6): plugged fins, cap and plain water lead to boiling, scale, hotter metal,
 * cracks, gas in the coolant and overheating again: a loop.
 */
const overheating = () =>
  recordOf(
    [
      named(1, 'Fins plugged'),
      named(2, 'Plain water'),
      named(3, 'Scale'),
      named(4, 'Crack', { foundOn: '2026-05-01' }),
      named(5, 'Overheating', { foundOn: '2026-04-01' }),
    ],
    [
      link(1, 5, { certainty: 'suspected' }),
      link(2, 3),
      link(3, 4),
      link(4, 5, { certainty: 'suspected' }),
      link(5, 4, { evidence: 'gauge stood in the red' }),
    ],
  );

describe('a chain that closes on itself', () => {
  it('is one story; its loop is opened at the earliest found, and nothing is left out', () => {
    const [story, ...others] = storiesOf(overheating());
    expect(others).toEqual([]);
    expect(story?.links.filter(({ closesLoop }) => closesLoop).map(({ id }) => id)).toEqual(['4-5']);
    expect(story?.roots).toEqual(['f1', 'f2']);
    const order = story?.findings.map(({ finding }) => finding.number) ?? [];
    expect(order.indexOf(5)).toBeLessThan(order.indexOf(4));
  });

  it('is opened where the mechanic marked it', () => {
    const record = overheating();
    const findings = record.findings.map((finding) =>
      finding.number === 4 ? { ...finding, loopStart: true } : finding,
    );
    const [story] = storiesOf(recordOf(findings, record.links));
    expect(story?.links.filter(({ closesLoop }) => closesLoop).map(({ id }) => id)).toEqual(['5-4']);
  });

  it('is told in sentences, with how sure each link is and where the loop begins', () => {
    const [story] = storiesOf(overheating());
    expect(story && tellStory(story)).toEqual([
      'It begins in two places: finding 1, fins plugged (suspected) and finding 2, plain water (suspected).',
      'Finding 1 is suspected to have led to finding 5, overheating (suspected).',
      'Finding 2 led to finding 3, scale (suspected).',
      'Finding 3 led to finding 4, crack (suspected).',
      'Finding 5 led to finding 4.',
      'Finding 4 comes of findings 3 and 5 together: mending one of them does not end it.',
      'Finding 4 is suspected to make finding 5 worse, so the chain closes on itself; for the order it is taken to begin at finding 5, the earliest found of it.',
    ]);
  });
});

it('causes of which one would be enough are told so', () => {
  const record = recordOf(
    [named(1, 'Jet broken'), named(2, 'Oil low'), named(3, 'Scuffed')],
    [link(1, 3, { join: 'or' }), link(2, 3, { join: 'or' })],
  );
  const [story] = storiesOf(record);
  expect(story && tellStory(story)).toContain(
    'Which of findings 1 or 2 led to finding 3 is not settled; one would be enough.',
  );
});

it('a chain that can be drawn without lines that cross is drawn so', () => {
  const findings = [1, 4, 5, 6, 7].map((number) => named(number, `Finding ${number}, with a name of some length`));
  const [story] = storiesOf(recordOf(findings, [link(1, 5), link(4, 6), link(6, 5), link(6, 7)]));
  expect(story && crossingsIn(drawStory(story, { titled: true }))).toBe(0);
});

it('separate chains are separate stories; findings in the bin, superseded or alone are in none', () => {
  const record = recordOf(
    [
      named(1, 'a'),
      named(2, 'b'),
      named(3, 'c'),
      named(4, 'd'),
      named(5, 'alone'),
      named(6, 'gone', { binned: true }),
      named(7, 'newer', { supersedes: 'f3' }),
    ],
    [link(1, 2), link(3, 4), link(6, 2), link(4, 7)],
  );
  expect(storiesOf(record).map(({ findings }) => findings.map(({ finding }) => finding.number))).toEqual([
    [1, 2],
    [4, 7],
  ]);
});

it('what a link rests on is said in words, never by a key', () => {
  const record = recordOf([named(1, 'a'), named(2, 'b'), named(3, 'Steam seen', { kind: 'observation' })], []);
  expect(evidenceWords(link(1, 2, { evidence: 'Crust over it.', shownBy: [{ findingId: 'f3' }] }), record)).toBe(
    'crust over it; “steam seen”',
  );
  expect(evidenceWords(link(1, 2, { shownBy: [{ readingId: 'nowhere' }] }), record)).toBe('what is no longer here');
});

describe('any set of links', () => {
  const causes = fc
    .uniqueArray(fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 7 })), {
      maxLength: 14,
      selector: ([from, to]) => `${from}-${to}`,
    })
    .map((pairs) => pairs.filter(([from, to]) => from !== to).map(([from, to]) => link(from, to)));

  it('has no loop left without the links that close one, and each of those lay on a loop', () => {
    fc.assert(
      fc.property(causes, (links) => {
        const ids = [1, 2, 3, 4, 5, 6, 7].map((number) => `f${number}`);
        const closing = linksThatClose(ids, links, (loop) => loop.toSorted()[0] ?? '');
        const rest = links.filter((each) => !closing.includes(each));
        expect(loopsAmong(ids, rest)).toEqual([]);
        const onLoops = loopsAmong(ids, links);
        for (const { fromId, toId } of closing)
          expect(onLoops.some((loop) => loop.includes(fromId) && loop.includes(toId))).toBe(true);
      }),
    );
  });

  it('is drawn from left to right, every finding once, none over another, all of it on the sheet', () => {
    fc.assert(
      fc.property(causes, fc.boolean(), (links, titled) => {
        const findings = [1, 2, 3, 4, 5, 6, 7].map((number) =>
          named(number, `Finding of some length, number ${number}`),
        );
        for (const story of storiesOf(recordOf(findings, links))) {
          const { nodes, edges, width, height } = drawStory(story, { titled });
          expect(nodes.map(({ findingId }) => findingId)).toEqual(story.findings.map(({ finding }) => finding.id));
          const at = new Map(nodes.map((node) => [node.findingId, node]));
          for (const node of nodes) {
            expect(node.at.x).toBeGreaterThanOrEqual(0);
            expect(node.at.x + node.width).toBeLessThanOrEqual(width + 0.5);
            expect(node.at.y + node.height).toBeLessThanOrEqual(height + 0.5);
            for (const other of nodes) {
              if (other === node) continue;
              const apart =
                node.at.x + node.width <= other.at.x ||
                other.at.x + other.width <= node.at.x ||
                node.at.y + node.height <= other.at.y ||
                other.at.y + other.height <= node.at.y;
              expect(apart).toBe(true);
            }
          }
          for (const { fromId, toId, closesLoop, head } of edges) {
            const [from, to] = [at.get(fromId), at.get(toId)];
            expect((from?.at.x ?? 0) < (to?.at.x ?? 0)).toBe(!closesLoop);
            expect(head).toHaveLength(3);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
