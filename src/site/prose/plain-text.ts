type TextLike = { readonly type: string; readonly value?: unknown; readonly children?: readonly TextLike[] };

/** The words of some nodes, without their marks. */
export function toPlainText(nodes: readonly TextLike[]): string {
  return nodes.map((node) => (typeof node.value === 'string' ? node.value : toPlainText(node.children ?? []))).join('');
}
