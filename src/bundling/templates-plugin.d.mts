import type { Plugin as EsbuildPlugin } from 'esbuild';
import type { Plugin as VitePlugin } from 'vitest/config';

export declare const templatesForEsbuild: EsbuildPlugin;
export declare const templatesForVite: VitePlugin;
