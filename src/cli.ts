import { Command, CommanderError } from 'commander';
import { addBuild } from './commands/build.ts';
import { addCheck } from './commands/check.ts';
import { exit } from './commands/exit-codes.ts';
import { addExplain } from './commands/explain.ts';
import { addImport } from './commands/import.ts';
import { UsageError } from './usage-error.ts';

const program = new Command('bowbook')
  .description('Makes an annotated tune book, as a website, from a folder of Markdown.')
  .exitOverride()
  .configureHelp({ showGlobalOptions: true });

addBuild(program);
addCheck(program);
addExplain(program);
addImport(program);

try {
  await program.parseAsync();
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
