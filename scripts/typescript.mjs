import { fileURLToPath } from 'node:url';
import { register } from 'tsx/esm/api';

/** From here on this process can import .ts and .tsx files; no second process is started. */
export function allowTypeScript() {
  register({ tsconfig: fileURLToPath(new URL('../tsconfig.json', import.meta.url)) });
}
