import sharp from 'sharp';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The upright picture: grey, with what has to be found again at places that no turning or mirroring maps onto each other. */
export const upright = {
  width: 1600,
  height: 1200,
  /** A red cross: what a point is set on. */
  cross: { x: 430, y: 860 },
  /** Yellow squares: the ends of what a line is drawn along. */
  ends: [
    { x: 900, y: 300 },
    { x: 1300, y: 420 },
  ],
  /** Magenta squares that no mark comes near: they tell where and how large the picture lies. */
  fiducials: [
    { x: 100, y: 90 },
    { x: 1500, y: 1100 },
  ],
} as const;

type Colour = readonly [red: number, green: number, blue: number];

const armPx = 40;
const armHalfWidthPx = 6;
const squareHalfPx = 12;

function colourAt(x: number, y: number): Colour {
  const near = (spot: Spot, dx: number, dy: number) => Math.abs(x - spot.x) <= dx && Math.abs(y - spot.y) <= dy;
  const { cross, ends, fiducials } = upright;
  if (near(cross, armPx, armHalfWidthPx) || near(cross, armHalfWidthPx, armPx)) return [255, 0, 0];
  if (ends.some((end) => near(end, squareHalfPx, squareHalfPx))) return [255, 255, 0];
  if (fiducials.some((spot) => near(spot, squareHalfPx, squareHalfPx))) return [255, 0, 255];
  return [128, 128, 128];
}

/**
 * Where a pixel of the upright picture is stored, by the tag that says which visual sides the stored first row and first
 * column are.
 *
 * Source: Exif 2.32 (CIPA DC-008), tag 0112h Orientation: 1 top left, 2 top right, 3 bottom right, 4 bottom left,
 * 5 left top, 6 right top, 7 right bottom, 8 left bottom.
 */
function storedAt({ x, y }: Spot, orientation: number): Spot {
  const { width, height } = upright;
  const [right, bottom] = [width - 1 - x, height - 1 - y];
  const rows: readonly [firstRow: number, firstColumn: number][] = [
    [y, x],
    [y, right],
    [bottom, right],
    [bottom, x],
    [x, y],
    [right, y],
    [right, bottom],
    [x, bottom],
  ];
  const [row, column] = rows[orientation - 1] ?? [y, x];
  return { x: column, y: row };
}

/** The picture as a camera held in that way would have stored it. */
export async function storedPicture(orientation: number): Promise<Buffer> {
  const isTurned = orientation >= 5;
  const width = isTurned ? upright.height : upright.width;
  const height = isTurned ? upright.width : upright.height;
  const pixels = Buffer.alloc(width * height * 3);
  for (let y = 0; y < upright.height; y += 1) {
    for (let x = 0; x < upright.width; x += 1) {
      const at = storedAt({ x, y }, orientation);
      pixels.set(colourAt(x, y), (at.y * width + at.x) * 3);
    }
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 95, chromaSubsampling: '4:4:4' })
    .withMetadata({ orientation })
    .toBuffer();
}
