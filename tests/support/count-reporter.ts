import type { Reporter, TestModule } from 'vitest/node';

/** Closes the run with one plain line, "2500 passed, 0 failed", which any program that reads the output understands. */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const states = modules.flatMap((module) => [...module.children.allTests()].map((test) => test.result().state));
    const brokenFiles = modules.filter(
      (module) => module.state() === 'failed' && [...module.children.allTests('failed')].length === 0,
    );
    const passed = states.filter((state) => state === 'passed').length;
    const failed = states.filter((state) => state === 'failed').length + brokenFiles.length;
    process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
  }
}
