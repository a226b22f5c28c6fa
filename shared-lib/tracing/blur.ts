/** Gaussian kernel cut at three sigma, normalised to sum 1; index 0 is the middle. */
function halfKernel(sigma: number): Float64Array {
  const radius = Math.max(1, Math.ceil(3 * sigma));
  const half = new Float64Array(radius + 1);
  let sum = 0;
  for (let i = 0; i <= radius; i += 1) {
    const weight = Math.exp((-i * i) / (2 * sigma * sigma));
    half[i] = weight;
    sum += i === 0 ? weight : 2 * weight;
  }
  for (let i = 0; i <= radius; i += 1) half[i] = (half[i] ?? 0) / sum;
  return half;
}

/** Gaussian blur of a picture; at the edge the outermost pixel is repeated. */
export function blur(data: Float32Array, width: number, height: number, sigma: number): Float32Array {
  const half = halfKernel(sigma);
  const radius = half.length - 1;
  const across = new Float32Array(width * height);
  const padded = new Float32Array(width + 2 * radius);
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    padded.set(data.subarray(row, row + width), radius);
    padded.fill(data[row] ?? 0, 0, radius);
    padded.fill(data[row + width - 1] ?? 0, radius + width);
    for (let x = 0; x < width; x += 1) {
      let sum = (half[0] as number) * (padded[x + radius] as number);
      for (let i = 1; i <= radius; i += 1) {
        sum += (half[i] as number) * ((padded[x + radius - i] as number) + (padded[x + radius + i] as number));
      }
      across[row + x] = sum;
    }
  }
  const blurred = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    const middle = half[0] as number;
    for (let x = 0; x < width; x += 1) blurred[row + x] = middle * (across[row + x] as number);
    for (let i = 1; i <= radius; i += 1) {
      const above = Math.max(0, y - i) * width;
      const below = Math.min(height - 1, y + i) * width;
      const weight = half[i] as number;
      for (let x = 0; x < width; x += 1) {
        blurred[row + x] =
          (blurred[row + x] as number) + weight * ((across[above + x] as number) + (across[below + x] as number));
      }
    }
  }
  return blurred;
}

/** Mean over a square of 2 radius + 1 pixels, clipped at the edge (running sums, so the radius costs nothing). */
export function boxMean(data: Float32Array, width: number, height: number, radius: number): Float32Array {
  const across = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    let sum = 0;
    for (let x = 0; x < Math.min(radius, width); x += 1) sum += data[row + x] as number;
    for (let x = 0; x < width; x += 1) {
      if (x + radius < width) sum += data[row + x + radius] as number;
      if (x - radius - 1 >= 0) sum -= data[row + x - radius - 1] as number;
      across[row + x] = sum / (Math.min(width - 1, x + radius) - Math.max(0, x - radius) + 1);
    }
  }
  const mean = new Float32Array(width * height);
  const sums = new Float64Array(width);
  for (let y = 0; y < Math.min(radius, height); y += 1) {
    for (let x = 0; x < width; x += 1) sums[x] = (sums[x] as number) + (across[y * width + x] as number);
  }
  for (let y = 0; y < height; y += 1) {
    const entering = y + radius < height ? (y + radius) * width : -1;
    const leaving = y - radius - 1 >= 0 ? (y - radius - 1) * width : -1;
    const rows = Math.min(height - 1, y + radius) - Math.max(0, y - radius) + 1;
    for (let x = 0; x < width; x += 1) {
      let sum = sums[x] as number;
      if (entering >= 0) sum += across[entering + x] as number;
      if (leaving >= 0) sum -= across[leaving + x] as number;
      sums[x] = sum;
      mean[y * width + x] = sum / rows;
    }
  }
  return mean;
}
