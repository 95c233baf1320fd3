import type { Rule } from '../../shared/rules.ts';

/** Path of the page about a rule, from the folder of Bowbook. */
export const rulePage = (rule: Rule): string => `docs/rules/${rule}.md`;
