import { useAppState } from '../app/app-state.ts';
import { dateOnClock, timeWords } from '../ui/shop-clock.ts';

interface MomentProps {
  /** Null where nobody kept the time. */
  readonly atMs: number | null;
  /** The day that is taken for granted, as `2026-06-08`. */
  readonly day: string;
  readonly className?: string | undefined;
}

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** `08:10`, with the day over it where it was another: a stay may last weeks. */
export function Moment({ atMs, day, className }: MomentProps) {
  const { shop } = useAppState();
  if (atMs === null) return <span className={className} />;
  const date = dateOnClock(atMs, shop.timeZone);
  return (
    <time className={className}>
      {date !== day && (
        <>
          {Number(date.slice(8, 10))} {months[Number(date.slice(5, 7)) - 1]}
          <br />
        </>
      )}
      {timeWords(atMs, shop.timeZone)}
    </time>
  );
}
