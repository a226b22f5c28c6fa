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
  const [page, setPage] = useState<string>();
  useEffect(() => {
    let isOver = false;
    const show = (next: string) => {
      if (!isOver) setPage(next);
    };
    if (isNear) void withPhotos(svg).then(show);
    else show(svg);
    return () => {
      isOver = true;
    };
  }, [svg, isNear]);
  // An address is made where it is used, and given back once its picture or a later one has been read: before that,
  // reading may not have begun. The listeners go on when the leaf itself is gone.
  useLayoutEffect(() => {
    const picture = leaf.current;
    if (page === undefined || picture === null) return;
    const url = URL.createObjectURL(new Blob([page], { type: 'image/svg+xml' }));
    const release = () => URL.revokeObjectURL(url);
    for (const end of ['load', 'error']) picture.addEventListener(end, release, { once: true });
    picture.src = url;
  }, [page]);
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  return <img ref={leaf} className={styles.leaf} width={width} height={height} alt={`Page ${number} of ${of}`} />;
}
