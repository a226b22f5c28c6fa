import { useEffect, useRef, useState } from 'react';
import { useNear } from '../ui/use-near.ts';
import { withPhotos } from './page-photos.ts';
import styles from './ReportPage.module.css';

interface ReportLeafProps {
  readonly svg: string;
  readonly number: number;
  readonly of: number;
}

/**
 * One page as it prints. As a picture: whatever stands in the record, nothing in it can run. Its photos are in it while it
 * is near, so that a long report doesn't hold them all.
 */
export function ReportLeaf({ svg, number, of }: ReportLeafProps) {
  const leaf = useRef<HTMLImageElement>(null);
  const isNear = useNear(leaf);
  const [url, setUrl] = useState<string>();
  useEffect(() => {
    let made: string | undefined;
    let isOver = false;
    const show = (page: string) => {
      if (isOver) return;
      made = URL.createObjectURL(new Blob([page], { type: 'image/svg+xml' }));
      setUrl(made);
    };
    if (isNear) void withPhotos(svg).then(show);
    else show(svg);
    return () => {
      isOver = true;
      if (made !== undefined) URL.revokeObjectURL(made);
    };
  }, [svg, isNear]);
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  return (
    <img ref={leaf} className={styles.leaf} src={url} width={width} height={height} alt={`Page ${number} of ${of}`} />
  );
}
