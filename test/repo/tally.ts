import type { Reporter, TestModule } from 'vitest/node';

/** Closes a run with the plain line “N passed, N failed”, which our continuous integration reads. */
export default class Tally implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    const count = { passed: 0, failed: 0, skipped: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state !== 'pending') count[state] += 1;
      }
      if (module.errors().length > 0) count.failed += 1;
    }
    count.failed += errors.length;
    console.log(`\n${String(count.passed)} passed, ${String(count.failed)} failed${count.skipped > 0 ? `, ${String(count.skipped)} skipped` : ''}`);
  }
}
