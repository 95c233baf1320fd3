import { type Command, Option } from 'commander';
import { levels } from '../../shared/bowing/settings.ts';
import { exit } from './exit-codes.ts';
import { report } from './terminal.ts';

/** `bowbook explain FILE`. */
export function addExplain(program: Command): void {
  program
    .command('explain')
    .description('print what Bowbook computes for a lesson, a book or an .abc file')
    .argument('<file>')
    .option('--json', 'print the study as JSON')
    .addOption(new Option('--start <stroke>', 'the first stroke').choices(['down', 'up']))
    .option('--anchor <bars>', 'an anchor to plan for, such as A5-A6')
    .addOption(
      new Option('--arrive <stroke>', 'the stroke that the anchor begins on').choices([
        'down',
        'up',
      ]),
    )
    .option('--tune <number>', 'only the tune with this X: number')
    .addOption(
      new Option('--level <level>', 'the player’s level, whose limits apply').choices([...levels]),
    )
    .option('--preset <name>', 'the bowing preset')
    .action(async (file: string, options) => {
      const { explainFile } = await import('../app/explain.ts');
      const { text, problems, root } = await explainFile(file, options);
      process.stdout.write(text);
      if (!options.json) report(problems, root ?? process.cwd());
      if (problems.some(p => p.severity === 'error')) process.exitCode = exit.errors;
    });
}
