import type { Cut, CutSheet } from './job.ts';

/** All cuts made at one setting of fence or stop, sheet by sheet. */
export type SettingGroup = {
  readonly kind: Cut['kind'];
  /** mm */
  readonly setting: number;
  /** index of the sheet and number of the cut on it, in order */
  readonly cuts: readonly { readonly sheet: number; readonly number: number }[];
};

/** The cut list by setting: rips, then crosscuts, the larger setting first; trimming comes before all. mm. */
export function cutListBySetting(sheets: readonly CutSheet[]): readonly SettingGroup[] {
  const groups = new Map<string, { kind: Cut['kind']; setting: number; cuts: { sheet: number; number: number }[] }>();
  for (const [index, sheet] of sheets.entries()) {
    for (const cut of sheet.cuts) {
      const key = `${cut.kind} ${cut.setting}`;
      const group = groups.get(key) ?? { kind: cut.kind, setting: cut.setting, cuts: [] };
      group.cuts.push({ sheet: index, number: cut.number });
      groups.set(key, group);
    }
  }
  const rank: readonly Cut['kind'][] = ['trim', 'rip', 'crosscut'];
  return [...groups.values()].sort((a, b) => rank.indexOf(a.kind) - rank.indexOf(b.kind) || b.setting - a.setting);
}
