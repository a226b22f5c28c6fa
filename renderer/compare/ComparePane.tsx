import { type ReactNode, useLayoutEffect, useRef } from 'react';
import type { Size, XY } from '../../shared-lib/geometry/spaces.ts';
import type { View } from '../../shared-lib/geometry/viewport.ts';
import styles from './ComparePane.module.css';
import { type DrawnMark, MarksOver } from './MarksOver.tsx';
import { usePaneInput } from './use-pane-input.ts';

interface ComparePaneProps {
  readonly label: string;
  /** Said on the photo. */
  readonly caption: ReactNode;
  /** Size of the frame that is looked at, in its own pixels. */
  readonly frame: Size;
  readonly view: View;
  readonly stage: Size;
  readonly onView: (view: View) => void;
  readonly onStage: (stage: Size) => void;
  readonly marks: readonly DrawnMark[];
  readonly isAdding?: boolean | undefined;
  readonly onPress?: ((at: XY) => void) | undefined;
  /** The photo's layers. */
  readonly children: ReactNode;
  /** What lies over the marks: points, the swipe's line. */
  readonly over?: ReactNode;
}

/** One window onto a photo or onto two laid over each other. */
export function ComparePane(props: ComparePaneProps) {
  const {
    label,
    caption,
    frame,
    view,
    stage,
    onView,
    onStage,
    marks,
    isAdding = false,
    onPress,
    children,
    over,
  } = props;
  const pane = useRef<HTMLDivElement>(null);
  const told = useRef(onStage);
  useLayoutEffect(() => {
    told.current = onStage;
  });
  useLayoutEffect(() => {
    const element = pane.current;
    if (!element) return;
    const measure = () => told.current({ width: element.clientWidth, height: element.clientHeight });
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, []);
  usePaneInput(pane, { view, frame, stage, onView, onPress: (at) => onPress?.(at) });
  return (
    <div
      ref={pane}
      className={styles.pane}
      role="application"
      aria-label={label}
      aria-roledescription="photo"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: an application is worked by keyboard
      tabIndex={0}
      data-adding={isAdding || undefined}
      data-view={JSON.stringify(view)}
    >
      <div className={styles.layer} aria-hidden="true">
        {children}
      </div>
      <MarksOver marks={marks} view={view} stage={stage} />
      <p className={styles.caption}>{caption}</p>
      {over}
    </div>
  );
}
