import { mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import type { LogRecord } from '../../src/core/log/record.ts';
import type { Book } from '../../src/site/notebooks.ts';
import { photoFor, reencoded } from '../../src/site/photos.ts';
import { notebook, prose } from './fixture.ts';

const photos = mkdtempSync(join(tmpdir(), 'photos-'));
const entry = { photos: [{ file: 'home.jpg', alt: 'a face', private: true }] } as unknown as LogRecord;
const book: Book = { notebook: { ...notebook, log: [entry] }, prose, photos };

/** A picture from a camera: turned by its tag, with a place and an owner in its metadata. */
async function camera(): Promise<Buffer> {
  const plain = sharp({ create: { width: 1200, height: 800, channels: 3, background: '#557755' } });
  const exif = { IFD0: { Copyright: 'Somebody' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } };
  return plain.jpeg().withExif(exif).withMetadata({ orientation: 6 }).toBuffer();
}

beforeAll(async () => {
  const bytes = await camera();
  for (const name of ['wall.jpg', 'home.jpg']) writeFileSync(join(photos, name), bytes);
  writeFileSync(
    join(photos, 'drawn.svg'),
    '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><script>alert(1)</script></svg>',
  );
  writeFileSync(join(photos, 'disguised.jpg'), '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>');
  writeFileSync(join(photos, 'cut.jpg'), bytes.subarray(0, 40));
  writeFileSync(join(photos, 'half.jpg'), bytes.subarray(0, bytes.length / 2));
  writeFileSync(join(photos, 'words.jpg'), 'not a picture');
  writeFileSync(join(photos, 'empty.jpg'), '');
  symlinkSync('/etc/hostname', join(photos, 'link.jpg'));
});

describe('a photo', () => {
  test('comes out upright, without a trace of metadata, in widths for phone and desk', async () => {
    expect((await sharp(join(photos, 'wall.jpg')).metadata()).exif).toBeDefined();
    const photo = await photoFor(book, 'wall.jpg');
    if (typeof photo === 'string') throw new Error(photo);
    expect(photo.sizes.map((size) => size.width)).toEqual([480, 800]);
    expect([photo.width, photo.height]).toEqual([800, 1200]);
    const bytes = await reencoded(book, 'wall.jpg', 480);
    const { exif, format, height, icc, iptc, orientation, width, xmp } = await sharp(bytes).metadata();
    expect({ exif, format, height, icc, iptc, orientation, width, xmp }).toEqual({
      format: 'jpeg',
      height: 720,
      width: 480,
    });
    expect(bytes.includes('Somebody')).toBe(false);
  });

  test('is the same bytes each time', async () => {
    expect((await reencoded(book, 'wall.jpg', 480)).equals(await reencoded(book, 'wall.jpg', 480))).toBe(true);
  });

  test('that is private is not published, wherever it is named', async () => {
    expect(await photoFor(book, 'home.jpg')).toBe('private');
    expect(await photoFor(book, 'wall.jpg')).toHaveProperty('file', 'wall.jpg');
  });

  test.each(['drawn.svg', 'disguised.jpg', 'cut.jpg', 'words.jpg', 'empty.jpg'])(
    '%s is no picture, and nothing of it is published',
    async (file) => {
      expect(await photoFor(book, file)).toBe('unreadable');
    },
  );

  test('that broke off half way shows what there is', async () => {
    expect(await photoFor(book, 'half.jpg')).toHaveProperty('file', 'half.jpg');
    expect((await sharp(await reencoded(book, 'half.jpg', 480)).metadata()).width).toBe(480);
  });

  test.each(['link.jpg', '../photos/wall.jpg', '/etc/hostname', 'a/../wall.jpg', 'missing.jpg', 'a b.jpg', ''])(
    '%s is refused',
    async (file) => {
      await expect(photoFor(book, file)).rejects.toThrow();
    },
  );
});
