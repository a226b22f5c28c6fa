import { type PointerEvent, useState } from 'react';
import type { Signature } from '../../shared-lib/choices/records.ts';
import { Button } from '../ui/Button.tsx';
import styles from './SignatureBox.module.css';

interface SignatureBoxProps {
  readonly by: string;
  readonly strokes: Signature;
  readonly onChange: (strokes: Signature) => void;
}

type Stroke = Signature[number];

const width = 400;
const height = 120;
const longestSignature = 400;

const share = (value: number): number => Math.min(1, Math.max(0, Math.round(value * 1e4) / 1e4));

function pointOf(event: PointerEvent<SVGSVGElement>): [number, number] {
  const box = event.currentTarget.getBoundingClientRect();
  return [share((event.clientX - box.left) / box.width), share((event.clientY - box.top) / box.height)];
}

const path = (stroke: Stroke): string => stroke.map(([x, y]) => `${x * width},${y * height}`).join(' ');

/** Signed with pen, finger or mouse. A stroke counts once the pen is lifted. */
export function SignatureBox({ by, strokes, onChange }: SignatureBoxProps) {
  const [drawn, setDrawn] = useState<Stroke>([]);
  const lift = () => {
    if (drawn.length > 0 && strokes.length < longestSignature) onChange([...strokes, drawn]);
    setDrawn([]);
  };
  return (
    <div>
      <svg
        className={styles.box}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={strokes.length === 0 ? `Where ${by} signs` : `Signed by ${by}`}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          setDrawn([pointOf(event)]);
        }}
        onPointerMove={(event) => {
          if (drawn.length > 0) setDrawn([...drawn, pointOf(event)]);
        }}
        onPointerUp={lift}
        onPointerCancel={() => setDrawn([])}
      >
        {[...strokes, drawn].map((stroke, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: strokes are only ever added at the end
          <polyline key={index} className={styles.stroke} points={path(stroke)} />
        ))}
      </svg>
      <div className={styles.under}>
        <span>{strokes.length === 0 ? `${by} signs here` : `signed by ${by}`}</span>
        {strokes.length > 0 && (
          <Button look="link" onPress={() => onChange([])}>
            Sign again
          </Button>
        )}
      </div>
    </div>
  );
}
