// What hears a person's own words: loaded once they begin to write.
import * as v from 'valibot';
import { Listener } from '../../wizards/hearing/index.ts';

const text = v.string();
const lines = v.record(text, v.array(text));
const dangers = v.record(text, v.array(v.array(text)));
const SAID = v.array(v.object({ check: text, option: text, lines, dangers: v.optional(dangers) }));

/** Reads what people say for each answer. Throws where the file is not of that shape. */
export const listenTo = (value: unknown): Listener => new Listener(v.parse(SAID, value));
