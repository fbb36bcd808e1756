/** What takes up space under a bay, as people say it: a bay's own drawer or shelf needs no number. */
export function spaceName(id: string): string {
  const [, kind, rest = '', end = ''] = /(?:^|\.)(drawer|shelf|leg)\.([^.]+)(?:\.(.+))?$/.exec(id) ?? [];
  const plain = (words: string) => words.replaceAll('-', ' ').replaceAll('.', ' ');
  if (kind === 'drawer') return end === 'pulled-out' ? 'drawer pulled out' : 'drawer';
  if (kind === 'shelf') return 'shelf';
  if (kind === 'leg') return `${end === 'caster' ? 'caster' : 'leg'} ${plain(rest)}`;
  return id.endsWith('.motor') ? `motor of ${id.slice(0, -'.motor'.length)}` : plain(id);
}
