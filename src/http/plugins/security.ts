import helmet from '@fastify/helmet';
import type { App } from '../app-type.ts';

/** Headers: scripts and styles only from ourselves, no framing, no sniffing. */
export async function security(app: App, overTls: boolean): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        objectSrc: ["'none'"],
        frameAncestors: ["'none'"],
        formAction: ["'self'"],
        upgradeInsecureRequests: overTls ? [] : null,
      },
    },
    strictTransportSecurity: overTls ? { maxAge: 15_552_000 } : false,
    referrerPolicy: { policy: 'same-origin' },
  });
}
