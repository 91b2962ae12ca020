/** A person at the public API, by token. Everything that the demo does goes through here. */
export interface Caller {
  readonly name: string;
  readonly get: (path: string) => Promise<Answer>;
  /** Sends and expects one of these statuses; anything else ends the demo with what the service said. */
  readonly send: (method: string, path: string, body: unknown, expected: number, headers?: Headers) => Promise<Answer>;
  /** The answer's bytes, not taken apart. */
  readonly fetch: (path: string) => Promise<Response>;
  readonly calls: () => number;
}

type Headers = Readonly<Record<string, string>>;

export interface Answer {
  readonly body: unknown;
  readonly etag: string;
}

export function caller(base: string, name: string, token: string): Caller {
  let calls = 0;
  const ask = async (method: string, path: string, expected: number, body?: unknown, headers: Headers = {}) => {
    calls += 1;
    const response = await fetch(`${base}/api/v1${path}`, {
      method,
      headers: {
        authorization: `Bearer ${token}`,
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    if (response.status !== expected) {
      const said = (await response.text()).slice(0, 1_000);
      throw new Error(`${name}: ${method} ${path} was answered ${response.status}, not ${expected}: ${said}`);
    }
    return response;
  };
  const read = async (response: Response): Promise<Answer> => {
    const text = await response.text();
    return { body: text === '' ? null : JSON.parse(text), etag: response.headers.get('etag') ?? '' };
  };
  return {
    name,
    get: async (path) => read(await ask('GET', path, 200)),
    send: async (method, path, body, expected, headers) => read(await ask(method, path, expected, body, headers)),
    fetch: (path) => ask('GET', path, 200),
    calls: () => calls,
  };
}
