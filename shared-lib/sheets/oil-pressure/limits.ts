/** Oil pressure has no default: only the maker's figures judge it. */
export const usualPressureKpa = [20, 700] as const;
