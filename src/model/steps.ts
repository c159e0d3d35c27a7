/** What a piece of work done a step at a time comes to, in one go. */
export function whole<T>(steps: Generator<undefined, T>): T {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}
