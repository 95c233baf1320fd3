import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fillTemplate } from './fill-template.ts';

/** What the teacher of a new book is asked. */
export interface BookAnswers {
  readonly title: string;
  readonly teacher: string | null;
  /** Where the class meets. */
  readonly town: string | null;
  /** The day of the first lesson, `2026-09-15`. */
  readonly date: string;
}

/** A file of a new book; `path` is relative to the book's folder, with forward slashes. */
export interface BookFile {
  readonly path: string;
  readonly content: string;
}

/** The files of a new book, made from the templates in a folder. Writes nothing. */
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
