import { AWAKE } from '@/lib/planner/early-start';

export const ASLEEP_ID = 'asleep';

/** The slowest phone on the slowest line that was measured wakes up in less. */
const PATIENCE_MS = 12_000;

/**
 * Shows the words of `Asleep` where the page does not wake up: at once where the browser cannot read a script at all,
 * else after some time. Until it does wake up, remembers what was pressed. In the oldest JavaScript there is (ES5), since
 * what cannot read the rest must read this. Keep it a constant; the content security policy knows it by its hash.
 */
export const ASLEEP_SCRIPT = `(function(){function asleep(){return !document.documentElement.hasAttribute('${AWAKE}')}function say(){var e=document.getElementById('${ASLEEP_ID}');if(e&&asleep())e.hidden=false}addEventListener('click',function(e){if(asleep()&&e.target.closest)self.heavyAirPressed=e.target.closest('button')},true);addEventListener('error',function(e){if(e.error instanceof SyntaxError)setTimeout(say,0)});setTimeout(say,${PATIENCE_MS})})()`;

/**
 * Tells zod before it is loaded that it may make no code of its own: the content security policy forbids it, and each
 * try is reported as an error.
 */
export const PARSER_SCRIPT = 'self.__zod_globalConfig={jitless:true}';
