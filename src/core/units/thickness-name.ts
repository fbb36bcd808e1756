import { firstLiteral, shopText } from './one-length.ts';

/** A sheet called by its nominal thickness, mm, and its material; what it measures is in its stock file. */
export type ThicknessName = { readonly nominal: number; readonly material: string };

const MATERIAL = /^ ?(?:[a-z]+ )*(?:ply|plywood|mdf|hardboard|foam|board|blockboard|chipboard|osb|sheet)$/i;

/** A thickness name: `3/4" ply`, `18mm ply`, `18 mm birch plywood`; null when the text is anything else. */
export function readThicknessName(text: string): ThicknessName | null {
  const plainText = shopText(text) ?? '';
  const size = firstLiteral(plainText);
  if (size === null || size.kind !== 'literal' || size.dimension !== 'length') return null;
  const material = plainText.slice(size.to);
  return MATERIAL.test(material) ? { nominal: size.value, material: material.trim() } : null;
}
