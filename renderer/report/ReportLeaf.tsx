import { useEffect, useLayoutEffect, useRef, useState } from 'react';
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
    let isOver = false;
    const show = (page: string) => {
      if (!isOver) setUrl(URL.createObjectURL(new Blob([page], { type: 'image/svg+xml' })));
    };
    if (isNear) void withPhotos(svg).then(show);
    else show(svg);
    return () => {
      isOver = true;
    };
  }, [svg, isNear]);
  // An address is given back once its picture or a later one has been read: before that, reading may not have begun. The
  // listeners go on when the leaf itself is gone.
  useLayoutEffect(() => {
    if (url === undefined) return;
    const release = () => URL.revokeObjectURL(url);
    for (const end of ['load', 'error']) leaf.current?.addEventListener(end, release, { once: true });
  }, [url]);
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  return (
    <img ref={leaf} className={styles.leaf} src={url} width={width} height={height} alt={`Page ${number} of ${of}`} />
  );
}
