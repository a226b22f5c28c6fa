const drawings = {
  search: 'M10.5 4a6.5 6.5 0 1 0 0 13 6.5 6.5 0 0 0 0-13zM15.3 15.3 21 21',
  forward: 'M2 12h19M14 5l7 7-7 7',
  back: 'M22 12H3M10 5l-7 7 7 7',
  close: 'M5 5l14 14M19 5 5 19',
  tick: 'M4 12.5 10 18 20.5 5.5',
  plus: 'M12 4v16M4 12h16',
  swipe: 'M8 6 2 12l6 6M16 6l6 6-6 6M2 12h20',
} as const;

export type IconName = keyof typeof drawings;

interface IconProps {
  readonly name: IconName;
  readonly size?: number | undefined;
}

/** Drawn, not typed: the typeface has no arrows and no tick. */
export function Icon({ name, size = 24 }: IconProps) {
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      strokeWidth={2}
      aria-hidden="true"
      focusable="false"
    >
      <path d={drawings[name]} />
    </svg>
  );
}
