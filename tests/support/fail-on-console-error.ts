import { format } from 'node:util';
import { afterAll, afterEach } from 'vitest';

// A test during which something was written with console.error fails. One that expects the message says so itself:
// const said = vi.spyOn(console, 'error').mockImplementation(() => {});
// (An unhandled rejection fails the run without our help.)
const said: string[] = [];

console.error = (...parts: unknown[]) => {
  said.push(format(...parts));
};

afterEach(refuseErrors);
afterAll(refuseErrors);

function refuseErrors(): void {
  const messages = said.splice(0);
  if (messages.length > 0) throw new Error(`Unexpected console.error:\n${messages.join('\n')}`);
}
