import type { IncomingMessage, ServerResponse } from 'node:http';

const bodyMost = 12 * 1024 * 1024;
const loopbackNames = new Set(['127.0.0.1', 'localhost', '[::1]']);

/** Only this machine's own browser and processes get an answer, whatever name was bound to the address. */
export const isFromHere = (request: IncomingMessage): boolean => {
  const { host, origin } = request.headers;
  if (host === undefined || !URL.canParse(`http://${host}`)) return false;
  return (
    loopbackNames.has(new URL(`http://${host}`).hostname) &&
    (origin === undefined || origin === `http://${host}`)
  );
};

export const readBody = async (request: IncomingMessage): Promise<Buffer | undefined> => {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request) {
    const bytes = Buffer.from(chunk);
    size += bytes.length;
    if (size > bodyMost) return undefined;
    chunks.push(bytes);
  }
  return Buffer.concat(chunks);
};

export const answerJson = (
  response: ServerResponse,
  status: number,
  value: unknown,
  headers: Readonly<Record<string, string>> = {},
) => {
  response.writeHead(status, { 'content-type': 'application/json; charset=utf-8', ...headers });
  response.end(JSON.stringify(value ?? {}));
};

export const answerText = (
  response: ServerResponse,
  status: number,
  type: string,
  body: string | Buffer,
  headers: Readonly<Record<string, string>> = {},
) => {
  response.writeHead(status, { 'content-type': type, 'x-content-type-options': 'nosniff', ...headers });
  response.end(body);
};

export const parseJson = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

type Arguments = { readonly args: Readonly<Record<string, unknown>>; readonly token: string | undefined };

export const readArguments = (request: IncomingMessage, body: Buffer): Arguments => {
  const bearer = /^Bearer (.+)$/.exec(request.headers.authorization ?? '')?.[1];
  const isJson = (request.headers['content-type'] ?? '').startsWith('application/json');
  const parsed = isJson
    ? parseJson(body.toString())
    : Object.fromEntries(new URLSearchParams(body.toString()));
  const all: Record<string, unknown> = typeof parsed === 'object' && parsed !== null ? { ...parsed } : {};
  const { token, ...args } = all;
  return { args, token: bearer ?? (typeof token === 'string' ? token : undefined) };
};

/** A call's arguments for people: JSON strings become what they hold. */
export const readable = (args: Readonly<Record<string, unknown>>): unknown =>
  Object.fromEntries(
    Object.entries(args).map(([name, value]) => [
      name,
      typeof value === 'string' && /^[[{]/.test(value) ? (parseJson(value) ?? value) : value,
    ]),
  );

export const firstPart = async (body: Buffer, contentType: string): Promise<Buffer> => {
  const form = await new Response(new Uint8Array(body), {
    headers: { 'content-type': contentType },
  }).formData();
  const [part] = [...form.values()];
  if (part === undefined) return Buffer.alloc(0);
  return typeof part === 'string' ? Buffer.from(part) : Buffer.from(await part.arrayBuffer());
};
