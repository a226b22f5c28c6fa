import { useRef } from 'react';
import type { MachineVisit } from '../../shared-lib/contract/machines.ts';
import { go } from '../app/place.ts';
import { classNames } from '../ui/class-names.ts';
import { useWidth } from '../ui/use-width.ts';
import { dateWords, hoursWords, numberWords } from '../ui/words.ts';
import styles from './HourRule.module.css';
import { besideMark, hourScale, labelRooms, shareAlong } from './hour-scale.ts';
import { visitWords } from './visit-words.ts';

interface HourRuleProps {
  readonly visits: readonly MachineVisit[];
}

interface Scribed {
  readonly entry: MachineVisit;
  readonly id: string;
  readonly hours: number;
  readonly x: number;
  readonly isOpen: boolean;
}

const height = 96;
const top = 26;
const fewestLabelPx = 150;
/** A letter's mean width at the size of the words over a mark; ample, so that nothing is cut that could stand. */
const letterPx = 8.4;

function wantedPx(entry: MachineVisit): number {
  return Math.max(visitWords(entry).length, dateWords(entry.visit.date).length + 8) * letterPx + 16;
}

/** A steel rule of the machine's hours with its visits scribed across it; the open one is blue. */
export function HourRule({ visits }: HourRuleProps) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const read = visits.flatMap((entry) => (entry.trueHours === null ? [] : [{ entry, hours: entry.trueHours }]));

  return (
    <div ref={frame} className={styles.frame}>
      {width > 0 && read.length === 0 && (
        <>
          <p className={styles.remark}>Nobody has read the hour meter yet.</p>
          <svg className={styles.drawing} width={width} height={height} aria-hidden="true">
            <rect className={styles.unread} x={0.75} y={top} width={width - 1.5} height={60} rx={2} />
          </svg>
        </>
      )}
      {width > 0 && read.length > 0 && <Rule read={read} width={width} />}
    </div>
  );
}

interface RuleProps {
  readonly read: readonly { readonly entry: MachineVisit; readonly hours: number }[];
  readonly width: number;
}

function Rule({ read, width }: RuleProps) {
  const scale = hourScale(read.map(({ hours }) => hours));
  const xOf = (hours: number) => 2 + shareAlong(scale, hours) * (width - 4);
  const marks: Scribed[] = read
    .map(({ entry, hours }) => ({
      entry,
      id: entry.visit.id,
      hours,
      x: xOf(hours),
      isOpen: entry.visit.leftAtMs === null,
    }))
    .sort((a, b) => a.hours - b.hours);
  const rooms = labelRooms(
    marks.map(({ id, x, entry }) => ({ id, x, wantedPx: wantedPx(entry) })),
    width,
    fewestLabelPx,
  );

  return (
    <>
      {rooms.map(({ id, left, width: room, alignEnd }) => {
        const mark = marks.find((other) => other.id === id);
        if (mark === undefined) return null;
        const { visit } = mark.entry;
        return (
          <button
            type="button"
            key={id}
            className={classNames(styles.label, alignEnd && styles.end)}
            style={{ left: alignEnd ? left : left - 8, width: room + 8 }}
            onClick={() => go({ name: 'visit', visitId: id, page: 'page' })}
          >
            <span className={classNames(styles.date, mark.isOpen && styles.open)}>
              {dateWords(visit.date)}
              {mark.isOpen ? ', open' : ''}
            </span>
            <span className={styles.said}>{visitWords(mark.entry)}</span>
          </button>
        );
      })}
      <svg className={styles.drawing} width={width} height={height} role="img" aria-label={spokenRule(marks)}>
        <rect className={styles.rule} x={0.75} y={top} width={width - 1.5} height={60} rx={2} />
        {scale.minors.map((hours) => {
          const isMajor = scale.majors.some((major) => Math.abs(major - hours) < scale.minorStep / 2);
          const isMiddle = Math.round(hours / scale.minorStep) % 5 === 0;
          const length = isMajor ? 30 : isMiddle ? 22 : 14;
          return (
            <line
              key={hours}
              className={isMajor ? styles.major : styles.tick}
              x1={xOf(hours)}
              x2={xOf(hours)}
              y1={top}
              y2={top + length}
            />
          );
        })}
        {scale.majors.map((hours) => {
          const half = numberWords(hours).length * 4.2;
          const inside = Math.min(Math.max(xOf(hours), half + 6), width - half - 6);
          const x = besideMark(
            inside,
            half,
            marks.map((mark) => mark.x),
          );
          return (
            <text key={hours} className={styles.number} x={x} y={top + 51}>
              {numberWords(hours)}
            </text>
          );
        })}
        <Between marks={marks} />
        {marks.map(({ id, x, isOpen }) => (
          <g key={id}>
            <line
              className={isOpen ? styles.openVisit : styles.visit}
              x1={x}
              x2={x}
              y1={isOpen ? 0 : 4}
              y2={top + 64}
            />
            <circle className={isOpen ? styles.openHole : styles.hole} cx={x} cy={top + 32} r={4} />
          </g>
        ))}
      </svg>
    </>
  );
}

/** The hours run between two visits, where there is room to write them. */
function Between({ marks }: { readonly marks: readonly Scribed[] }) {
  const y = 14;
  return marks.slice(1).map((mark, index) => {
    const before = marks[index];
    if (before === undefined || mark.x - before.x < 150) return null;
    const words = hoursWords(mark.hours - before.hours);
    const middle = (before.x + mark.x) / 2;
    const half = words.length * 4.5 + 14;
    const [left, right] = [before.x + 6, mark.x - 6];
    return (
      <g key={mark.id}>
        <path
          className={styles.span}
          d={`M${middle - half} ${y}H${left}m7 -4l-7 4l7 4M${middle + half} ${y}H${right}m-7 -4l7 4l-7 4`}
        />
        <text className={styles.spanWords} x={middle} y={y + 5}>
          {words}
        </text>
      </g>
    );
  });
}

function spokenRule(marks: readonly Scribed[]): string {
  const visits = marks.map(({ entry, hours }) => `${dateWords(entry.visit.date)} at ${hoursWords(hours)}`);
  return `Visits along the hour meter: ${visits.join(', ')}`;
}
