// What hears a person's own words: loaded once they begin to write.
import * as z from 'zod/mini';
import { Listener } from '../../wizards/put-it-right/index.ts';

const text = z.string();
const SAID = z.array(z.object({ check: text, option: text, lines: z.array(text) }));

/** Reads what people say for each answer. Throws where the file is not of that shape. */
export const listenTo = (value: unknown): Listener => new Listener(SAID.parse(value));
