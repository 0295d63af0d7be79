/** Power at each frequency of real samples, their number a power of two; entry i is at i sampleRate/length. */
export function powerSpectrum(samples: readonly number[]): number[] {
  const n = samples.length;
  const re = Float64Array.from(samples);
  const im = new Float64Array(n);
  for (let i = 1, j = 0; i < n; i += 1) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      const swapped = re[i] ?? 0;
      re[i] = re[j] ?? 0;
      re[j] = swapped;
    }
  }
  for (let size = 2; size <= n; size *= 2) {
    const step = (-2 * Math.PI) / size;
    for (let start = 0; start < n; start += size) {
      for (let k = 0; k < size / 2; k += 1) {
        const [cos, sin] = [Math.cos(step * k), Math.sin(step * k)];
        const [low, high] = [start + k, start + k + size / 2];
        const [hr, hi] = [re[high] ?? 0, im[high] ?? 0];
        const [tr, ti] = [hr * cos - hi * sin, hr * sin + hi * cos];
        const [lr, li] = [re[low] ?? 0, im[low] ?? 0];
        re[high] = lr - tr;
        im[high] = li - ti;
        re[low] = lr + tr;
        im[low] = li + ti;
      }
    }
  }
  return Array.from({ length: n / 2 }, (_, i) => (re[i] ?? 0) ** 2 + (im[i] ?? 0) ** 2);
}

/** Middle of the energy over frequency, Hz: the usual measure of brightness. */
export function spectralCentroid(samples: readonly number[], sampleRate: number): number {
  const power = powerSpectrum(samples);
  const total = power.reduce((sum, value) => sum + value, 0);
  const weighted = power.reduce((sum, value, i) => sum + value * i, 0);
  return total > 0 ? ((weighted / total) * sampleRate) / samples.length : 0;
}

/** Root mean square of samples. */
export const rms = (samples: readonly number[]): number =>
  Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);
