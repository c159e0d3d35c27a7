/**
 * Inverse of a symmetric positive definite matrix, by Cholesky's factor (textbook: Golub & Van Loan, Matrix Computations,
 * section 4.2). Null where a pivot is lost in rounding: the matrix is then not definite, and nothing was determined.
 */
const LOST = 1e-13;

export type Matrix = readonly (readonly number[])[];

function factor(matrix: Matrix): number[][] | null {
  const lower = matrix.map((row) => row.map(() => 0));
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i][j];
      for (let k = 0; k < j; k++) sum -= lower[i][k] * lower[j][k];
      if (i > j) lower[i][j] = sum / lower[j][j];
      else if (sum > LOST * matrix[i][i]) lower[i][i] = Math.sqrt(sum);
      else return null;
    }
  }
  return lower;
}

/** Column by column: forwards through the factor, then back through its transpose. */
export function inverseOf(matrix: Matrix): number[][] | null {
  const lower = factor(matrix);
  if (lower === null) return null;
  const size = matrix.length;
  const columns = matrix.map((_, unit) => {
    const x = matrix.map((__, row) => (row === unit ? 1 : 0));
    for (let i = 0; i < size; i++) {
      for (let k = 0; k < i; k++) x[i] -= lower[i][k] * x[k];
      x[i] /= lower[i][i];
    }
    for (let i = size - 1; i >= 0; i--) {
      for (let k = i + 1; k < size; k++) x[i] -= lower[k][i] * x[k];
      x[i] /= lower[i][i];
    }
    return x;
  });
  return columns;
}

export function times(matrix: Matrix, vector: readonly number[]): number[] {
  return matrix.map((row) => row.reduce((sum, value, at) => sum + value * vector[at], 0));
}
