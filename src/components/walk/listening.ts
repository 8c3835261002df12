// What hears a person's own words: loaded once they begin to write.
import * as v from 'valibot';
import { Listener } from '../../wizards/hearing/index.ts';

const text = v.string();
const SAID = v.array(v.object({ check: text, option: text, lines: v.record(text, v.array(text)) }));

/** Reads what people say for each answer. Throws where the file is not of that shape. */
export const listenTo = (value: unknown): Listener => new Listener(v.parse(SAID, value));
