/** Where the page about a rule stands, from the folder of Bowbook. */
export const rulePage = (rule: string): string => `docs/rules/${rule}.md`;
