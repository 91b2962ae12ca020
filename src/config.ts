import { readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';

/** What the process was told. The only reader of the environment; everything else is handed these values. */
export interface Config {
  readonly host: string;
  readonly port: number;
  readonly databaseUrl: string;
  readonly tls: { readonly cert: string; readonly key: string } | null;
  readonly trustProxy: boolean;
  readonly logLevel: string;
  readonly publicUrl: string | null;
}

const environmentSchema = z.object({
  HOST: z.string().min(1).default('127.0.0.1'),
  PORT: z.coerce.number().int().min(0).max(65_535).default(3000),
  DATA_DIR: z.string().min(1).default('data'),
  DATABASE_URL: z
    .string()
    .regex(/^(file:|postgres(ql)?:\/\/)/, 'must start with file: or postgresql://')
    .optional(),
  TLS_CERT: z.string().optional(),
  TLS_KEY: z.string().optional(),
  TRUST_PROXY: z.enum(['0', '1']).default('0'),
  LOG_LEVEL: z.enum(['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent']).default('info'),
  PUBLIC_URL: z.url().optional(),
});

/** Reads and checks the environment; throws one error that names every faulty variable. */
export function readConfig(environment: NodeJS.ProcessEnv = process.env): Config {
  const parsed = environmentSchema.safeParse(environment);
  if (!parsed.success) {
    const faults = parsed.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
    throw new Error(`The environment is not usable. ${faults.join('; ')}`);
  }
  const env = parsed.data;
  return {
    host: env.HOST,
    port: env.PORT,
    databaseUrl: env.DATABASE_URL ?? `file:${path.join(env.DATA_DIR, 'jobbook.db')}`,
    tls: readTls(env.TLS_CERT, env.TLS_KEY),
    trustProxy: env.TRUST_PROXY === '1',
    logLevel: env.LOG_LEVEL,
    publicUrl: env.PUBLIC_URL ?? null,
  };
}

function readTls(certFile: string | undefined, keyFile: string | undefined): Config['tls'] {
  if (certFile === undefined && keyFile === undefined) return null;
  if (certFile === undefined || keyFile === undefined) {
    throw new Error('TLS_CERT and TLS_KEY go together: give the files of both, or neither.');
  }
  return { cert: readFileSync(certFile, 'utf8'), key: readFileSync(keyFile, 'utf8') };
}
