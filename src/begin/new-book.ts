import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fillTemplate } from './fill-template.ts';

/** What is asked of a teacher who begins a book. */
export interface BookAnswers {
  readonly title: string;
  readonly teacher: string | null;
  /** Where the class meets. */
  readonly town: string | null;
  /** The day of the first lesson, `2026-09-15`. */
  readonly date: string;
}

/** A file of a new book; its path is from the book's folder. */
export interface BookFile {
  readonly path: string;
  readonly content: string;
}

/** The files of a new book, from the templates in a folder. The same answers give the same files. */
export function newBook(templates: string, answers: BookAnswers): readonly BookFile[] {
  const { title, teacher, town, date } = answers;
  const about = town === null ? null : `Tunes and lessons of a class in ${town}`;
  return readdirSync(templates, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => join(entry.parentPath, entry.name))
    .toSorted()
    .map(file => {
      const path = file.slice(templates.length + 1).replaceAll('\\', '/');
      const content = fillTemplate(readFileSync(file, 'utf8'), { title, teacher, about, date });
      return { path: path.replace('first-evening', `${date}-first-evening`), content };
    });
}
