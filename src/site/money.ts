import { minorDigits } from '../core/units/currency.ts';

/** Money as it is printed: 18.50 EUR, with as many digits as its currency has. */
export function moneyWords({ currency, value }: { readonly value: number; readonly currency: string }): string {
  return `${value.toFixed(minorDigits(currency))}\u00A0${currency}`;
}
