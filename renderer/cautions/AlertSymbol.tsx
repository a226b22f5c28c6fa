interface AlertSymbolProps {
  readonly className?: string | undefined;
}

/** The safety alert symbol: a triangle with an exclamation mark cut out, in the colour of the word beside it. */
export function AlertSymbol({ className }: AlertSymbolProps) {
  return (
    <svg className={className} width="36" height="32" viewBox="0 0 36 32" aria-hidden="true">
      <path
        fillRule="evenodd"
        d="M18 .8a2.4 2.4 0 0 1 2.1 1.2l15 26a2.4 2.4 0 0 1-2.1 3.6H3a2.4 2.4 0 0 1-2.1-3.6l15-26A2.4 2.4 0 0 1 18 .8ZM15.9 10.2h4.2l-.7 10.6h-2.8ZM18 23a2.3 2.3 0 1 0 0 4.6 2.3 2.3 0 0 0 0-4.6Z"
      />
    </svg>
  );
}
