import { type KeyboardEvent, useRef, useState } from 'react';
import type { Diagram } from '../../shared-lib/diagrams/diagram-for.ts';
import type { DiagramPart } from '../../shared-lib/diagrams/drawing.ts';
import styles from './LocationDiagram.module.css';

interface DiagramPartsProps {
  readonly diagram: Diagram;
  readonly onPick: (path: string) => void;
}

const steps: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** Where a part lies, in per cent of the drawing, so that it keeps its place at any size. */
function placeOf({ outline }: DiagramPart, { width, height }: Diagram) {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const left = Math.min(...xs);
  const top = Math.min(...ys);
  return {
    left: `${(100 * left) / width}%`,
    top: `${(100 * top) / height}%`,
    width: `${(100 * (Math.max(...xs) - left)) / width}%`,
    height: `${(100 * (Math.max(...ys) - top)) / height}%`,
  };
}

/** The parts to pick from, lying over their lines: one stop for the tab key, arrows from part to part. */
export function DiagramParts({ diagram, onPick }: DiagramPartsProps) {
  const [current, setCurrent] = useState(0);
  const group = useRef<HTMLFieldSetElement>(null);
  const { parts } = diagram;
  const stop = Math.min(current, parts.length - 1);
  const move = (event: KeyboardEvent) => {
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = (stop + step + parts.length) % parts.length;
    setCurrent(next);
    group.current?.querySelectorAll('button')[next]?.focus();
  };
  return (
    <fieldset
      ref={group}
      className={styles.parts}
      aria-label={`Say where on the drawing: ${diagram.title}`}
      onKeyDown={move}
    >
      {parts.map((part, index) => (
        <button
          key={`${part.path} ${part.outline[0]?.x} ${part.outline[0]?.y}`}
          type="button"
          className={styles.part}
          style={placeOf(part, diagram)}
          tabIndex={index === stop ? 0 : -1}
          aria-label={part.name}
          title={part.name}
          onFocus={() => setCurrent(index)}
          onClick={() => onPick(part.path)}
        />
      ))}
    </fieldset>
  );
}
