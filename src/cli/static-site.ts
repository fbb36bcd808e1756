import { createReadStream } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join, sep } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.csv': 'text/csv; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.jpg': 'image/jpeg',
  '.png': 'image/png',
  '.webp': 'image/webp',
  '.avif': 'image/avif',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  '.pdf': 'application/pdf',
  '.zip': 'application/zip',
  '.dxf': 'image/vnd.dxf',
};

/** What a request gets: a file of the folder, the same place with a slash, or nothing. */
export type Answer =
  | { readonly kind: 'file'; readonly path: string; readonly size: number }
  | { readonly kind: 'moved'; readonly to: string }
  | { readonly kind: 'nothing' };

const nothing: Answer = { kind: 'nothing' };

/** The path of a request as names below the folder, or null when it tries to leave it or is no path. */
function namesOf(address: string): readonly string[] | null {
  const path = address.split(/[?#]/)[0] ?? '';
  try {
    const names = path.split('/').slice(1).map(decodeURIComponent);
    const odd = names.some((name) => name === '..' || name === '.' || /[/\\\0:]/.test(name));
    return !path.startsWith('/') || path.startsWith('//') || odd ? null : names;
  } catch {
    return null;
  }
}

async function found(
  folder: string,
  path: string,
): Promise<{ readonly path: string; readonly size: number } | 'folder' | null> {
  try {
    const real = await realpath(path);
    if (real !== folder && !real.startsWith(folder + sep)) return null;
    const there = await stat(real);
    return there.isDirectory() ? 'folder' : there.isFile() ? { path: real, size: there.size } : null;
  } catch {
    return null;
  }
}

/** What the folder answers to the address of a request; never anything outside the folder, through links neither. */
export async function answerTo(folder: string, address: string): Promise<Answer> {
  const names = namesOf(address);
  if (names === null) return nothing;
  const root = await realpath(folder);
  const ends = names.at(-1) === '';
  const there = await found(root, join(root, ...names));
  if (there === null) return nothing;
  if (there !== 'folder') return ends ? nothing : { kind: 'file', ...there };
  const index = await found(root, join(root, ...names, 'index.html'));
  if (index === null || index === 'folder') return nothing;
  return ends ? { kind: 'file', ...index } : { kind: 'moved', to: `/${names.map(encodeURIComponent).join('/')}/` };
}

const always = { 'X-Content-Type-Options': 'nosniff', 'Cache-Control': 'no-cache' };

function sendFile(
  request: IncomingMessage,
  response: ServerResponse,
  file: { readonly path: string; readonly size: number; readonly status: number },
): void {
  const type = types[extname(file.path)] ?? 'application/octet-stream';
  response.writeHead(file.status, { ...always, 'Content-Type': type, 'Content-Length': file.size });
  if (request.method === 'HEAD') response.end();
  else
    createReadStream(file.path)
      .on('error', () => response.destroy())
      .pipe(response);
}

function sendText(response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, { ...always, 'Content-Type': 'text/plain; charset=utf-8' }).end(`${text}\n`);
}

async function respond(folder: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return sendText(response, 405, 'This site is only read.');
  }
  const answer = await answerTo(folder, request.url ?? '/');
  if (answer.kind === 'file') return sendFile(request, response, { ...answer, status: 200 });
  if (answer.kind === 'moved') {
    response.writeHead(301, { ...always, Location: answer.to }).end();
    return;
  }
  const page = await answerTo(folder, '/404.html');
  if (page.kind === 'file') return sendFile(request, response, { ...page, status: 404 });
  sendText(response, 404, 'There is no such page.');
}

/** A server of a folder's files that is not listening yet. */
export function siteServer(folder: string): Server {
  return createServer((request, response) => {
    respond(folder, request, response).catch(() => {
      if (response.headersSent) response.destroy();
      else sendText(response, 500, 'This page could not be read.');
    });
  });
}

const here = '127.0.0.1';

function tryPort(server: Server, port: number): Promise<number | null> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(null);
      else reject(error);
    });
    server.listen(port, here, () => resolve(port));
  });
}

/** Listens on this machine only, on the first free port from `first`; gives the address. */
export async function listen(server: Server, first: number): Promise<string> {
  for (let port = first; port < first + 100; port += 1) {
    const taken = await tryPort(server, port);
    server.removeAllListeners('error');
    if (taken !== null) return `http://${here}:${port}/`;
  }
  throw new Error(`no free port from ${first} to ${first + 99}`);
}
