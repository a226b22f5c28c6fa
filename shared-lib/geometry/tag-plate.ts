import type { Tier } from '../contract/standing.ts';
import type { FindingState } from '../model/finding.ts';

/** All that a stamped tag shows of a finding. Without a tier (not ranked, or not yet) it is drawn as lightly as a note. */
export interface Tag {
  readonly number: number;
  readonly tier: Tier | null;
  readonly state: FindingState;
}

export interface PlateLine {
  /** SVG path data. */
  readonly d: string;
  readonly width: number;
  readonly dash: readonly number[] | null;
}

/** A plate drawn in its own units, one CSS pixel each; the same for the window, the lists and the report. */
export interface TagPlateDrawing {
  readonly width: number;
  readonly height: number;
  /** The closed outer outline, also where the plate's own line is open or dashed: filled with the plate's colour. */
  readonly body: string;
  /** The part that is solid ink; the hole and the number are then cut out of it. */
  readonly core: string | null;
  readonly lines: readonly PlateLine[];
  readonly hole: { readonly x: number; readonly y: number; readonly radius: number };
  readonly label: { readonly text: string; readonly x: number; readonly baselineY: number };
  /** Nothing was found: hairline, no fill, the number in the second ink. */
  readonly isHollow: boolean;
}

const height = 30;
const plainWidth = 45;
const suspectedWidth = 54;
const openWidth = 50;
const moreDigitWidth = 8.5;
const cornerRadius = 4;
export const tagFontSize = 21;
/** Barlow Condensed's capitals and figures stand 0.7 of the type size high; half of that below the middle. */
const baselineBelowMiddle = 0.35 * tagFontSize;

const innerWidth = 1.25;
const innerGap = 1.75;
const weights = [
  { outline: 1.75, inner: false },
  { outline: 2, inner: true },
  { outline: 3.5, inner: false },
  { outline: 1.75, inner: false },
  { outline: 1, inner: false },
] as const;
const hairline = 1;

export function drawTagPlate({ number, tier, state }: Tag): TagPlateDrawing {
  const weight = state === 'none-found' ? { outline: hairline, inner: false } : weights[tier ?? 4];
  const digits = String(number).length;
  const isOpen = state === 'not-examined';
  const isSuspected = state === 'suspected';
  const more = (digits - 1) * moreDigitWidth;
  const width = (isSuspected ? suspectedWidth : isOpen ? openWidth : plainWidth) + more;
  const isSolid = tier === 0 && state !== 'none-found';

  const lines: PlateLine[] = [];
  const line = (inset: number, thickness: number, dash: readonly number[] | null = null) =>
    lines.push({ d: plateLine(width, inset + thickness / 2, isOpen), width: thickness, dash });
  if (!isSolid || isSuspected || isOpen) line(0, weight.outline, isSuspected ? dashFor(weight.outline) : null);
  if (weight.inner) line(weight.outline + innerGap, innerWidth);

  return {
    width,
    height,
    body: plateOutline(width, 0),
    core: isSolid ? solidCore(width, state) : null,
    lines,
    hole: { x: 13.5, y: height / 2, radius: 3.4 },
    label: {
      text: isSuspected ? `${number}?` : String(number),
      x: (isSuspected ? 35.5 : isOpen ? 29.5 : 31) + more / 2,
      baselineY: height / 2 + baselineBelowMiddle,
    },
    isHollow: state === 'none-found',
  };
}

/** Suspected: a solid core inside the dashed line. Not examined: solid, but for the open right end. */
function solidCore(width: number, state: FindingState): string {
  if (state === 'suspected') return plateOutline(width, 3.5);
  if (state === 'not-examined') {
    const end = width - 9;
    const radius = height / 2;
    return `M${radius} 0H${end}V${height}H${radius}A${radius} ${radius} 0 0 1 ${radius} 0Z`;
  }
  return plateOutline(width, 0);
}

function plateLine(width: number, inset: number, isOpen: boolean): string {
  if (!isOpen) return plateOutline(width, inset);
  const radius = height / 2 - inset;
  return `M${width} ${inset}H${height / 2}A${radius} ${radius} 0 0 0 ${height / 2} ${height - inset}H${width}`;
}

function plateOutline(width: number, inset: number): string {
  const radius = height / 2 - inset;
  const corner = Math.max(0.5, cornerRadius - inset);
  const right = width - inset;
  const bottom = height - inset;
  return [
    `M${height / 2} ${inset}H${right - corner}`,
    `A${corner} ${corner} 0 0 1 ${right} ${inset + corner}V${bottom - corner}`,
    `A${corner} ${corner} 0 0 1 ${right - corner} ${bottom}H${height / 2}`,
    `A${radius} ${radius} 0 0 1 ${height / 2} ${inset}Z`,
  ].join('');
}

function dashFor(thickness: number): readonly number[] {
  return thickness > 3 ? [5.5, 3.5] : [4.5, 3];
}
