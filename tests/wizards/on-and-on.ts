// A walk stops asking whoever can check hardly anything. Tests of what may ever be asked go on beyond that.
import { walkModelNow } from '../../src/wizards/put-it-right/step.ts';

/** From now on, in this file, a walk asks on as long as there is something to ask. */
export function askOnAndOn(): void {
  const { settings } = walkModelNow().compiled;
  Object.assign(settings, { mostSkipped: settings.mostQuestions });
}
