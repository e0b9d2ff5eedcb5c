/**
 * Linear algebra for a handful of unknowns: symmetric, positive definite matrices as rows of numbers.
 * Source: G. H. Golub and C. F. Van Loan, Matrix Computations, "Cholesky factorization".
 */
export type Vector = readonly number[];
export type Matrix = readonly Vector[];

/** The lower triangle L of A = L·Lᵀ. A is symmetric and positive definite. */
export function cholesky(matrix: Matrix): Matrix {
  const lower: number[][] = matrix.map((row) => row.map(() => 0));
  for (let row = 0; row < matrix.length; row++)
    for (let column = 0; column <= row; column++) {
      let rest = matrix[row]![column]!;
      for (let k = 0; k < column; k++) rest -= lower[row]![k]! * lower[column]![k]!;
      lower[row]![column] = row === column ? Math.sqrt(rest) : rest / lower[column]![column]!;
    }
  return lower;
}

/** x of L·x = b. */
function forward(lower: Matrix, right: Vector): Vector {
  const found: number[] = [];
  for (const [row, coefficients] of lower.entries()) {
    let rest = right[row]!;
    for (let k = 0; k < row; k++) rest -= coefficients[k]! * found[k]!;
    found.push(rest / coefficients[row]!);
  }
  return found;
}

/** x of Lᵀ·x = b. */
export function backward(lower: Matrix, right: Vector): Vector {
  const found = right.map(() => 0);
  for (let row = right.length - 1; row >= 0; row--) {
    let rest = right[row]!;
    for (let k = row + 1; k < right.length; k++) rest -= lower[k]![row]! * found[k]!;
    found[row] = rest / lower[row]![row]!;
  }
  return found;
}

/** x of L·Lᵀ·x = b. */
export const solved = (lower: Matrix, right: Vector): Vector =>
  backward(lower, forward(lower, right));

export const dot = (a: Vector, b: Vector): number =>
  a.reduce((sum, value, index) => sum + value * b[index]!, 0);
