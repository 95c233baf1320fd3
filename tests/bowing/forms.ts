import fc from 'fast-check';
import type { LeadInModel } from '../../shared/bowing/lead-in-model.ts';

const direction = fc.constantFrom('down' as const, 'up' as const);

/** Random lead-ins with random limits and preferences. */
export const anyForm = (most: number): fc.Arbitrary<LeadInModel> =>
  fc.integer({ min: 1, max: most }).chain(notes => {
    const flags = (count: number) => fc.array(fc.boolean(), { minLength: count, maxLength: count });
    return fc.record({
      notes: fc.constant(notes),
      start: direction,
      arrive: direction,
      written: flags(notes - 1),
      slurrable: fc.oneof(flags(notes - 1), fc.constant(Array(notes - 1).fill(true))),
      lengths: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: notes, maxLength: notes }),
      longestSlur: fc.integer({ min: 1, max: 8 }),
      longestStroke: fc.integer({ min: 2, max: 20 }),
      strong: flags(notes),
      onBeat: flags(notes),
      rough: fc.array(fc.nat(2), { minLength: notes - 1, maxLength: notes - 1 }),
      strongBeat: fc.option(direction),
      intoBeat: fc.boolean(),
    });
  });

/** Separate notes with nothing in their way. */
export const plainForm = (notes: number): LeadInModel => ({
  notes,
  start: 'down',
  arrive: 'up',
  written: Array(notes - 1).fill(true),
  slurrable: Array(notes - 1).fill(true),
  lengths: Array(notes).fill(1),
  longestSlur: 4,
  longestStroke: 100,
  strong: Array.from({ length: notes }, (_, i) => i % 4 === 0),
  onBeat: Array.from({ length: notes }, (_, i) => i % 4 === 0),
  rough: Array(notes - 1).fill(0),
  strongBeat: 'down',
  intoBeat: true,
});
