import type { LinkProblem } from '@/lib/contract/link-problem';
import { formatNumber } from '@/lib/units/format';

/** Why a link or a file with a night cannot be opened, and what to do next. Nothing was changed in any of these. */
export function linkProblemSentence(problem: LinkProblem): string {
  switch (problem.code) {
    case 'empty':
      return 'There is no night in this link. Ask for it again, or open the file instead.';
    case 'too-long':
      return `This is longer than a night can be (${formatNumber(problem.limit)} characters). Ask for the night as a file.`;
    case 'newer-version':
      return 'This was made by a newer version of Heavy Air. Reload the page to get that version, then open the link again.';
    case 'damaged':
      return 'This link is damaged: a part is missing or was changed on the way, as mail and chat programs sometimes do. Ask for it again, or for the night as a file.';
    case 'not-a-night':
      return `This holds no night that can be used${problem.path === '' ? '' : ` (${problem.path}: ${problem.message})`}. Ask whoever made it to share it from Heavy Air again.`;
  }
}
