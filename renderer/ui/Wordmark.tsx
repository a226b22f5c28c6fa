/** Two blocks of unequal width and the line scribed across both, broken where they have shifted. */
export function Wordmark() {
  return (
    <svg width={37} height={22} viewBox="0 0 40 24" role="img" aria-label="Witness Mark">
      <g fill="var(--blue)">
        <rect x="1" y="0" width="14" height="20" />
        <rect x="16" y="4" width="23" height="20" />
      </g>
      <g stroke="var(--bench)" strokeWidth="2">
        <path d="M0 11.6L15 8.8" />
        <path d="M16 13L40 8.6" />
      </g>
    </svg>
  );
}
