import everyRun, { type IRawProperty, type Parameters } from 'fast-check';

/** Runs of a property for each mutant. */
const numRuns = 30;

const assert = <T>(property: IRawProperty<T>, parameters?: Parameters<T>) =>
  everyRun.assert(property, {
    ...parameters,
    numRuns: Math.min(parameters?.numRuns ?? numRuns, numRuns),
  });

export default { ...everyRun, assert };
