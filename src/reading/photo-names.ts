import { nearest } from '../core/units/nearest.ts';
import type { Telling } from './source.ts';

/** What is wrong with the name of a photo, or null; photos stand in the notebook's own folder `photos`. */
export function photoTelling(name: string, photos: readonly string[]): Telling | null {
  if (!/^\w[\w .-]*$/.test(name)) {
    return {
      rule: 'photo-path',
      what: `\`${name}\` is not the plain name of a photo`,
      mend: "put the photo into the notebook's folder photos and write its name alone: wall.jpg",
    };
  }
  if (/\.svg$/i.test(name)) {
    return {
      rule: 'photo-kind',
      what: 'an SVG can carry programs and is not taken as a photo',
      mend: 'save it as PNG or JPEG',
    };
  }
  if (photos.includes(name)) return null;
  const near = nearest(name, photos);
  const hint = near === null ? '' : `; did you mean \`${near}\`?`;
  return {
    rule: 'missing-photo',
    what: `there is no photo \`${name}\` in the notebook's folder photos`,
    mend: `put it there, or mend the name${hint}`,
  };
}

/** The name in the address of a picture in prose: `photos/wall.jpg` or `wall.jpg`. */
export function photoName(address: string): string {
  return address.replaceAll('%20', ' ').replace(/^(?:\.\/)?photos\//, '');
}
