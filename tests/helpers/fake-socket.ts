import { createHash } from 'node:crypto';
import { createServer } from 'node:http';
import type { Duplex } from 'node:stream';

/** The fixed key of the WebSocket handshake: RFC 6455, section 1.3. */
const handshakeKey = '258EAFA5-E914-47DA-95CA-C5AB0DC85B11';

/** One unmasked text frame up to 65,535 bytes: RFC 6455, section 5.2. */
function textFrame(text: string): Buffer {
  const body = Buffer.from(text);
  const head = body.length < 126 ? Buffer.from([0x81, body.length]) : Buffer.from([0x81, 126, 0, 0]);
  if (body.length >= 126) head.writeUInt16BE(body.length, 2);
  return Buffer.concat([head, body]);
}

type Frame = { readonly opcode: number; readonly text: string };

/** The masked frames of a chunk, one after the other. */
function readFrames(chunk: Buffer): readonly Frame[] {
  if (chunk.length < 6) return [];
  const short = (chunk[1] ?? 0) & 0x7f;
  const start = short === 126 ? 4 : 2;
  const length = short === 126 ? chunk.readUInt16BE(2) : short;
  const mask = chunk.subarray(start, start + 4);
  const end = start + 4 + length;
  const body = chunk.subarray(start + 4, end).map((byte, place) => byte ^ (mask[place % 4] ?? 0));
  const frame = { opcode: (chunk[0] ?? 0) & 0x0f, text: Buffer.from(body).toString() };
  return [frame, ...readFrames(chunk.subarray(end))];
}

export type FakeSocket = {
  readonly apiUrl: string;
  /** How many connections stand. */
  readonly open: () => number;
  readonly send: (envelope: Record<string, unknown>) => void;
  /** What the app sent back, each parsed. */
  readonly received: unknown[];
  /** Ends the connections as a network does. */
  readonly drop: () => void;
  readonly stop: () => Promise<void>;
};

/** A workspace's socket and the two calls that lead to it, on loopback. */
export async function startFakeSocket(
  answer: (method: string) => Record<string, unknown>,
): Promise<FakeSocket> {
  const sockets = new Set<Duplex>();
  const received: unknown[] = [];
  let host = '';
  const server = createServer((request, response) => {
    const method = (request.url ?? '').replace('/api/', '');
    request.resume();
    response.writeHead(200, { 'content-type': 'application/json' });
    const opened = { ok: true, url: `ws://${host}/link` };
    response.end(JSON.stringify(method === 'apps.connections.open' ? opened : answer(method)));
  });
  server.on('upgrade', (request, socket) => {
    const accept = createHash('sha1')
      .update(`${request.headers['sec-websocket-key']}${handshakeKey}`)
      .digest('base64');
    socket.write(
      `HTTP/1.1 101 Switching Protocols\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Accept: ${accept}\r\n\r\n`,
    );
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
    socket.on('error', () => sockets.delete(socket));
    socket.on('data', (chunk: Buffer) => {
      for (const { opcode, text } of readFrames(chunk)) {
        if (opcode === 1) received.push(JSON.parse(text));
        if (opcode === 8) socket.end(Buffer.from([0x88, 0]));
      }
    });
    socket.write(textFrame(JSON.stringify({ type: 'hello', num_connections: 1 })));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  host = `127.0.0.1:${typeof address === 'object' ? address?.port : 0}`;
  return {
    apiUrl: `http://${host}/api/`,
    open: () => sockets.size,
    send: (envelope) => {
      for (const socket of sockets) socket.write(textFrame(JSON.stringify(envelope)));
    },
    received,
    drop: () => {
      for (const socket of sockets) socket.destroy();
    },
    stop: async () => {
      for (const socket of sockets) socket.destroy();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
