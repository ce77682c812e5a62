/** What a person, or a screen reader, takes from the first screen of the night. Nothing else of the page is known to it. */
export type FirstScreen = {
  readonly inNow: { readonly mains: readonly number[]; readonly trim: number | null };
  /** null: nothing is said of it. */
  readonly state: 'LEAN' | 'GOOD' | 'RICH' | null;
  /** What to put in and by which clock time; null where nothing is. */
  readonly put: {
    readonly clock: string;
    readonly mains: readonly number[];
    readonly trim: number | null;
  } | null;
  /** Forecasts in which a run to come turns lean, of how many, and the run; null where none is to come. */
  readonly risk: { readonly lean: number; readonly of: number; readonly run: string | null } | null;
  /** Since the forecast was made [min]; null for hours that were typed. */
  readonly ageMinutes: number | null;
};

/** The text of the accessibility tree below an element: what is hidden from it, drawings with it, is not there. */
function heard(element: Element): string {
  if (element.getAttribute('aria-hidden') === 'true') return '';
  const parts = [...element.childNodes].map((node) => {
    if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
    return node instanceof Element ? heard(node) : '';
  });
  // Read one after the other, with a pause between.
  return parts.join(' ').replace(/\s+/g, ' ').trim();
}

/** Reads it all from the words alone. */
export function readFirstScreen(page: Element): FirstScreen {
  const region = (name: string) => heard(page.querySelector(`section[aria-label="${name}"]`) ?? page);
  const now = region('In now');
  const next = region('Next');
  const inNow = settingIn(/Other jets ([\d. ]+(?:trim \d+)?)/.exec(now)?.[1] ?? '');
  const act =
    /(?:Put in ([\d. ]+\d))?(?: ?(?:and set|Turn) trim to (\d+))? (?=After|Before|Ask|Start|Ready|Done)/.exec(
      next,
    );
  const clock = /^Next (\d\d:\d\d)/.exec(next)?.[1];
  const named = settingIn(act?.[1] ?? '').mains;
  const risk = /Risk of lean: (under )?(\d+) in (\d+)(?:, (.+?))?\./.exec(region('The night'));
  const top = heard(page.querySelector('h1')?.parentElement?.parentElement ?? page);
  return {
    inNow,
    state: (/\b(LEAN|GOOD|RICH)\b/.exec(now)?.[1] ?? null) as FirstScreen['state'],
    put:
      clock === undefined
        ? null
        : {
            clock,
            mains: inNow.mains.map((main, i) => named[i] ?? named[0] ?? main),
            trim: act?.[2] === undefined ? inNow.trim : Number(act[2]),
          },
    risk:
      risk === null
        ? null
        : {
            lean: risk[1] === undefined ? Number(risk[2]) : 0,
            of: Number(risk[3]),
            run: risk[4] ?? null,
          },
    ageMinutes: ageIn(top),
  };
}

/** "410 400 410 trim 3". */
function settingIn(text: string) {
  const [sizes = '', trim] = text.split('trim');
  const mains = sizes
    .trim()
    .split(' ')
    .filter((size) => size !== '')
    .map(Number);
  return { mains, trim: trim === undefined ? null : Number(trim) };
}

/** "fresh: 1 d 2 h", "old: 5 h 3 min", "fresh", "typed". */
function ageIn(text: string): number | null {
  const age = /(?:fresh|old)(?:: (?:(\d+) d)? ?(?:(\d+) h)? ?(?:(\d+) min)?)?$/.exec(text.trim());
  if (age === null) return null;
  const [days, hours, minutes] = age.slice(1).map((part) => Number(part ?? 0));
  return (days ?? 0) * 1440 + (hours ?? 0) * 60 + (minutes ?? 0);
}
