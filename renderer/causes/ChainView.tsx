import { useMemo } from 'react';
import { type ChainDrawing, drawStory } from '../../shared-lib/chains/draw.ts';
import { type Story, storiesOf } from '../../shared-lib/chains/stories.ts';
import { evidenceWords, tellStory } from '../../shared-lib/chains/tell.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { XY } from '../../shared-lib/geometry/spaces.ts';
import { useAppState } from '../app/app-state.ts';
import { go } from '../app/place.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { classNames } from '../ui/class-names.ts';
import styles from './ChainView.module.css';

interface ChainViewProps {
  readonly record: VisitRecord;
}

/** What led to what: each chain as a drawing from left to right, as a story, and link by link with what it rests on. */
export function ChainView({ record }: ChainViewProps) {
  const { shop } = useAppState();
  const stories = useMemo(() => storiesOf(record, shop.units), [record, shop.units]);
  if (stories.length === 0)
    return (
      <p className={styles.empty}>
        No finding leads to another yet. Open a finding on the page and say under {'\u201C'}What led to what{'\u201D'}{' '}
        what it comes from; the chain is drawn here and in the report.
      </p>
    );
  return stories.map((story) => <OneStory key={story.findings[0]?.finding.id} story={story} record={record} />);
}

function OneStory({ story, record }: { readonly story: Story; readonly record: VisitRecord }) {
  const drawing = useMemo(() => drawStory(story, { titled: true }), [story]);
  const sentences = tellStory(story);
  const numberOf = (id: string) => story.findings.find(({ finding }) => finding.id === id)?.finding.number ?? '?';
  return (
    <article className={styles.story} aria-label={`Chain of ${story.findings.length} findings`}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long chain is scrolled through by keyboard */}
      <section className={styles.scroll} aria-label="The chain, drawn" tabIndex={0}>
        <Drawing drawing={drawing} visitId={record.visit.id} />
      </section>
      <p className={styles.told}>{sentences.join(' ')}</p>
      <table className={styles.links}>
        <thead>
          <tr>
            <th scope="col">Link</th>
            <th scope="col">How sure</th>
            <th scope="col">What it rests on</th>
          </tr>
        </thead>
        <tbody>
          {story.links.map((link) => (
            <tr key={link.id}>
              <td>
                {numberOf(link.fromId)} led to {numberOf(link.toId)}
                {link.closesLoop && ', closing the loop'}
              </td>
              <td>{link.certainty}</td>
              <td>{evidenceWords(link, record) || <span className="soft">nothing is named</span>}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </article>
  );
}

const chainOf = (points: readonly XY[]): string =>
  points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');

function Drawing({ drawing, visitId }: { readonly drawing: ChainDrawing; readonly visitId: string }) {
  const { width, height, nodes, edges } = drawing;
  return (
    <div className={styles.drawing} style={{ width, height }}>
      <svg className={styles.lines} width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {edges.map(({ linkId, pieces, head, isSuspected, closesLoop, label }) => (
          <g key={linkId} className={classNames(styles.edge, closesLoop && styles.closing)}>
            {pieces.map((piece) => (
              <polyline key={chainOf(piece)} points={chainOf(piece)} data-suspected={isSuspected || undefined} />
            ))}
            <polyline points={chainOf(head)} />
            {label.lines.map((line, index) => (
              <text
                key={line}
                x={label.at.x}
                y={label.at.y + (index - (label.lines.length - 1) / 2) * 17 + 5}
                textAnchor="middle"
              >
                {line}
              </text>
            ))}
          </g>
        ))}
      </svg>
      {nodes.map(({ findingId, tag, title, lines, at, width: nodeWidth, height: nodeHeight }) => (
        <button
          key={findingId}
          type="button"
          className={styles.node}
          style={{ left: at.x, top: at.y, width: nodeWidth, height: nodeHeight }}
          aria-label={`Finding ${tag.number}: ${title}`}
          onClick={() => go({ name: 'visit', visitId, page: 'page', findingId })}
        >
          <TagPlate {...tag} height={26} />
          {lines.map((line, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: lines of one text do not move
            <span key={index}>{line}</span>
          ))}
        </button>
      ))}
    </div>
  );
}
