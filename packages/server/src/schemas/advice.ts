import { type Advice, adviceSchema, standingSchema, trapDesignSchema, verbSchema } from '@duskwatch/core';
import { z } from 'zod';

export const verb = verbSchema;
export const design = trapDesignSchema;
export const standing = standingSchema;

/** One of a closed set of words, the set complete or it does not compile. */
export const oneOf = <K extends string>(words: Record<K, true>) => z.enum(Object.keys(words) as [K, ...K[]]);

export const advice: z.ZodType<Advice> = adviceSchema;

/** What a cell of the week says of it. */
export const adviceInShort = adviceSchema.pick({ verb: true, by: true, rate: true, interval: true, confidence: true });
