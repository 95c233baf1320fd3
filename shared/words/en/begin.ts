/** What `bowbook begin` asks and says. */
export const beginWords = {
  intro: 'A few questions; press Enter to pass over one. Everything can be changed later.',
  askTitle: (otherwise: string): string => `What is the book called? [${otherwise}] `,
  askTeacher: 'Who teaches? ',
  askTown: 'In which town does the class meet? ',
  title: 'Our fiddle class',
  stopped: 'Stopped. Nothing was written.',
  isBook: (folder: string): string =>
    `"${folder}" is a book already. Nothing was written; choose another folder.`,
  isFile: (folder: string): string => `"${folder}" is a file. Choose another name for the folder.`,
  notEmpty: (folder: string): string =>
    `"${folder}" is not empty. Nothing was written; choose a new folder, such as "${folder}/book".`,
  date: (written: string): string => `--date takes a day such as 2026-09-15, not "${written}".`,
  written: (files: number, folder: string): string => `${files} files written to ${folder}:`,
  what: {
    'bowbook.yaml': 'the settings',
    lessons: 'the weekly lessons, newest first on the site',
    tunes: 'a page for each tune',
    pages: 'anything else',
  },
  next: 'Now:',
} as const;
