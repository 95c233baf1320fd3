/** The kinds of drill that a lesson may ask for. */
export const drillKinds = [
  'call',
  'gaps',
  'count',
  'arrive',
  'start',
  'same',
  'forks',
  'into',
] as const;
export type DrillKind = (typeof drillKinds)[number];
