/** Currency codes in use, ISO 4217. */
export const CURRENCIES: readonly string[] = (
  'AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CLP CNY COP CRC CUP CVE ' +
  'CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS ' +
  'KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR ' +
  'PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD ' +
  'TWD TZS UAH UGX USD UYU UZS VES VND VUV WST XAF XCD XOF XPF YER ZAR ZMW'
).split(' ');

/** Signs that mean one currency. */
export const SIGNS: Readonly<Record<string, string>> = {
  '€': 'EUR',
  '£': 'GBP',
  '₹': 'INR',
  '₺': 'TRY',
  '₴': 'UAH',
  '₪': 'ILS',
};

/** Signs that several currencies share. */
export const SHARED_SIGNS: Readonly<Record<string, readonly string[]>> = {
  $: ['USD', 'CAD', 'AUD', 'NZD'],
  '¥': ['JPY', 'CNY'],
  kr: ['SEK', 'NOK', 'DKK', 'ISK'],
};

const WITHOUT_CENTS = new Set('BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF'.split(' '));
const WITH_THOUSANDTHS = new Set('BHD IQD JOD KWD LYD OMR TND'.split(' '));

/** Digits after the point that amounts in a currency are printed with (ISO 4217, minor unit). */
export function minorDigits(currency: string): 0 | 2 | 3 {
  return WITHOUT_CENTS.has(currency) ? 0 : WITH_THOUSANDTHS.has(currency) ? 3 : 2;
}
