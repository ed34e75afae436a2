// What a set of leaves says while it is read; the same computation as the server's, with its numbers.

const sum = (values) => values.reduce((a, b) => a + b, 0);

export const mean = (values) => sum(values) / values.length;

/** Standard deviation of a sample, divisor n − 1; undefined for a single value. */
export function spread(values) {
  if (values.length < 2) {
    return undefined;
  }
  const middle = mean(values);
  return Math.sqrt(sum(values.map((x) => (x - middle) ** 2)) / (values.length - 1));
}

/** Half of the 95 % interval of the mean; undefined for a single value. t: Student's t by degrees of freedom from 1. */
export const halfWidth = (values, t) => (values.length < 2 ? undefined : (t[Math.min(values.length - 1, t.length) - 1] * spread(values)) / Math.sqrt(values.length));

/** Smallest number of independent leaves whose interval is no wider than wanted. */
export function leavesFor(standardDeviation, wanted, t) {
  let n = 2;
  while (n <= t.length && (t[n - 2] * standardDeviation) / Math.sqrt(n) > wanted) {
    n++;
  }
  return n;
}

/**
 * Leaves that a set should have, given those read so far: the block's usual spread stands for five leaves beside its own.
 * block: { leaves, spreadBar } as the round was planned; numbers: as the server wrote them.
 */
export function leavesWanted(values, block, numbers) {
  const usual = 5;
  const own = spread(values) ?? 0;
  const degrees = Math.max(0, values.length - 1);
  const pooled = Math.sqrt((degrees * own ** 2 + usual * block.spreadBar ** 2) / (degrees + usual));
  // Vines in groups count for less; the plan knows by how much.
  const factor = Math.max(1, block.leaves / leavesFor(block.spreadBar, numbers.halfWidthBar, numbers.t));
  const wanted = values.length < numbers.fewestLeaves ? block.leaves : Math.ceil(factor * leavesFor(pooled, numbers.halfWidthBar, numbers.t) - 1e-9);
  return Math.min(numbers.mostLeaves, Math.max(numbers.fewestLeaves, wanted));
}

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** Places of the leaves that do not belong to the others: the modified z score, and farther than a good gauge's scatter. */
export function outliers(values, numbers) {
  if (values.length === 0) {
    return [];
  }
  const middle = median(values);
  const deviations = values.map((x) => Math.abs(x - middle));
  const mad = median(deviations);
  const score = (x) => (mad > 0 ? (0.6745 * (x - middle)) / mad : mean(deviations) > 0 ? (x - middle) / (1.2533 * mean(deviations)) : 0);
  return values
    .map((x, i) => [x, i])
    .filter(([x]) => Math.abs(score(x)) > numbers.outlierZ && Math.abs(x - middle) > numbers.outlierZ * numbers.smallestSpreadBar)
    .map(([, i]) => i);
}
