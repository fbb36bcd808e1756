import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { createConnection } from 'node:net';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { listen, siteServer } from '../../src/cli/static-site.ts';
import { freshFolder } from './desk.ts';

async function served(): Promise<string> {
  const folder = freshFolder();
  const site = join(folder, 'dist');
  mkdirSync(join(site, 'shelf', 'empty'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  writeFileSync(join(site, 'index.html'), '<h1>all</h1>');
  writeFileSync(join(site, '404.html'), '<h1>not here</h1>');
  writeFileSync(join(site, 'shelf', 'index.html'), '<h1>shelf</h1>');
  writeFileSync(join(site, 'shelf', 'a b.svg'), '<svg/>');
  writeFileSync(join(site, 'cut-list.csv'), 'label\r\n');
  symlinkSync(join(folder, 'secret.txt'), join(site, 'link.txt'));
  symlinkSync(folder, join(site, 'out'));
  const server = siteServer(site);
  onTestFinished(() => void server.close());
  return listen(server, 47310);
}

/** The answer to a request line exactly as it is written; a client would tidy it up first. */
function raw(address: string, path: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = createConnection(Number(new URL(address).port), '127.0.0.1');
    let answer = '';
    socket.on('data', (text) => (answer += text)).on('end', () => resolve(answer));
    socket.on('error', reject);
    socket.write(`GET ${path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n`);
  });
}

test('pages, folders and files come with their type', async () => {
  const address = await served();
  const got = async (path: string) => {
    const response = await fetch(new URL(path, address));
    return [response.status, response.headers.get('content-type'), await response.text()];
  };
  expect(await got('/')).toEqual([200, 'text/html; charset=utf-8', '<h1>all</h1>']);
  expect(await got('/shelf')).toEqual([200, 'text/html; charset=utf-8', '<h1>shelf</h1>']);
  expect(await got('/shelf/a%20b.svg?x=1')).toEqual([200, 'image/svg+xml; charset=utf-8', '<svg/>']);
  expect(await got('/cut-list.csv')).toEqual([200, 'text/csv; charset=utf-8', 'label\r\n']);
  expect(await got('/nowhere/')).toEqual([404, 'text/html; charset=utf-8', '<h1>not here</h1>']);
  expect((await fetch(new URL('/shelf', address), { redirect: 'manual' })).headers.get('location')).toBe('/shelf/');
});

test.each([
  '/../secret.txt',
  '/shelf/../../secret.txt',
  '/%2e%2e/secret.txt',
  '/..%2fsecret.txt',
  '/%2e%2e%2fsecret.txt',
  '/shelf/..%5c..%5csecret.txt',
  '/..\\secret.txt',
  '//secret.txt',
  '/link.txt',
  '/out/secret.txt',
  '/out',
  '/index.html%00.txt',
  '/%E0%A4%A',
  '/C:/secret.txt',
  '/shelf/empty/',
  '/index.html/',
  'http://127.0.0.1/../secret.txt',
])('%s leads nowhere', async (path) => {
  const answer = await raw(await served(), path);
  expect(answer).toMatch(/^HTTP\/1\.1 404 /);
  expect(answer).not.toContain('secret');
});

test('HEAD has no body, and nothing can be sent', async () => {
  const address = await served();
  const head = await fetch(address, { method: 'HEAD' });
  expect([head.status, head.headers.get('content-length'), await head.text()]).toEqual([200, '12', '']);
  expect((await fetch(address, { method: 'POST', body: 'x' })).status).toBe(405);
});

test('a taken port is passed over', async () => {
  const [first, second] = [new URL(await served()), new URL(await served())];
  expect(Number(second.port)).toBeGreaterThan(Number(first.port));
  expect(second.hostname).toBe('127.0.0.1');
});
