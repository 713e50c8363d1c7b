import type { Verb } from '@duskwatch/core';

/** The most urgent first. */
export const VERBS = ['decide', 'scout', 'blind', 'covered', 'watch', 'none'] as const satisfies readonly Verb[];
