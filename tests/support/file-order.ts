import { readFileSync } from 'node:fs';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** As vitest finds it. */
const ON_A_PAGE = /@vitest-environment\s+jsdom\b/;

/**
 * All files that stand on a page, then all others, each dearest first. A thread that is handed a file of the other kind
 * is ended, and the next one loads every module anew.
 */
export class FileOrder extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const dearestFirst = await super.sort(files);
    const onPage = new Set(files.filter(({ moduleId }) => ON_A_PAGE.test(readFileSync(moduleId, 'utf8'))));
    return [
      ...dearestFirst.filter((file) => onPage.has(file)),
      ...dearestFirst.filter((file) => !onPage.has(file)),
    ];
  }
}
