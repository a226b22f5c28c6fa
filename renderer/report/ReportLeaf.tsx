import { useEffect, useState } from 'react';
import styles from './ReportPage.module.css';

interface ReportLeafProps {
  readonly svg: string;
  readonly number: number;
  readonly of: number;
}

/** One page as it prints. As a picture: whatever stands in the record, nothing in it can run. */
export function ReportLeaf({ svg, number, of }: ReportLeafProps) {
  const [url, setUrl] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return url === undefined ? null : <img className={styles.leaf} src={url} alt={`Page ${number} of ${of}`} />;
}
