import type { Plugin as EsbuildPlugin } from 'esbuild';
import type { Plugin as VitePlugin } from 'vite';

export declare const templatesForEsbuild: EsbuildPlugin;
export declare const templatesForVite: VitePlugin;
