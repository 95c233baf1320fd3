import { Command, CommanderError } from 'commander';
import { UsageError } from '../app/usage-error.ts';
import { addBegin } from './begin.ts';
import { addBuild } from './build.ts';
import { addCheck } from './check.ts';
import { exit } from './exit-codes.ts';
import { addExplain } from './explain.ts';
import { addExport } from './export.ts';
import { addImport } from './import.ts';
import { addPreview } from './preview.ts';
import { addPrint } from './print.ts';

/** Runs the command that the process's arguments name, and sets the exit code. */
export async function runCommand(): Promise<void> {
  // A reader of the output may stop before its end, as `head` does.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
  try {
    await commands().parseAsync();
  } catch (error) {
    if (error instanceof CommanderError) {
      process.exitCode = error.exitCode === 0 ? exit.sound : exit.usage;
    } else if (error instanceof UsageError) {
      process.stderr.write(`${error.message}\n`);
      process.exitCode = exit.usage;
    } else {
      throw error;
    }
  }
}

function commands(): Command {
  const program = new Command('bowbook')
    .description('Makes an annotated tune book, as a website, from a folder of Markdown.')
    .exitOverride()
    .configureHelp({ showGlobalOptions: true });
  addBegin(program);
  addBuild(program);
  addCheck(program);
  addExplain(program);
  addExport(program);
  addImport(program);
  addPreview(program);
  addPrint(program);
  return program;
}
