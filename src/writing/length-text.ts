/** Millimetres to a tenth: `17.7 mm`. */
function millimetres(mm: number): string {
  const tenths = Math.round(mm * 10) / 10;
  return `${tenths === 0 ? 0 : tenths} mm`;
}

/** Inches to the nearest 1/32, as a reduced fraction: `7 1/2 in`. */
function inches(mm: number): string {
  const parts = Math.round((Math.abs(mm) / 25.4) * 32);
  const whole = Math.floor(parts / 32);
  let [top, under] = [parts % 32, 32];
  while (top > 0 && top % 2 === 0) [top, under] = [top / 2, under / 2];
  const words = [...(whole > 0 || top === 0 ? [String(whole)] : []), ...(top > 0 ? [`${top}/${under}`] : [])];
  return `${mm < 0 && parts > 0 ? '-' : ''}${words.join(' ')} in`;
}

/** A length with its unit, as the notebook shows it. mm. */
export function lengthText(show: 'mm' | 'in'): (mm: number) => string {
  return show === 'mm' ? millimetres : inches;
}
