/** Where a function with one hump is highest. */
export interface Highest {
  readonly at: number;
  readonly height: number;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Golden-section search of [low, high] down to a span of `within`; the ends themselves count where they are higher. */
export function goldenSection(heightAt: (x: number) => number, low: number, high: number, within: number): Highest {
  let best: Highest = { at: high, height: Number.NEGATIVE_INFINITY };
  const measure = (x: number): number => {
    const height = heightAt(x);
    if (height > best.height) best = { at: x, height };
    return height;
  };
  measure(high);
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atLeft, atRight] = [measure(left), measure(right)];
  while (high - low > within) {
    if (atLeft > atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = measure(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = measure(right);
    }
  }
  return best;
}
