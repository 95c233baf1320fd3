import type { Rule } from '../../shared/rules.ts';

/** Where the page about a rule stands, from the folder of Bowbook. */
export const rulePage = (rule: Rule): string => `docs/rules/${rule}.md`;
