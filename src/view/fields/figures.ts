/** Numbers as the page prints them: with their unit, and a dash where a quantity does not exist. */
const NONE = '–';

export function millimetres(value: number | null, decimals = 0): string {
  return value === null ? NONE : `${value.toFixed(decimals)} mm`;
}

export function percent(share: number | null): string {
  return share === null ? NONE : `${Math.round(share * 100)} %`;
}

export function plain(value: number | null, decimals = 2): string {
  return value === null ? NONE : value.toFixed(decimals);
}
