/** Two halves and the line scribed across both: a witness mark that shows they have shifted. */
export function Wordmark() {
  return (
    <svg width={34} height={22} viewBox="0 0 34 22" role="img" aria-label="Witness Mark" fill="var(--blue)">
      <path d="M0 0h16v8H0zM0 11h16v8H0zM18 3h16v8H18zM18 14h16v8H18z" />
    </svg>
  );
}
