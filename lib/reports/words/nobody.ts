/** Whether there is nobody in any group. */
export function nobodyIn(groups: readonly { readonly segments: number }[]): boolean {
  return groups.every(({ segments }) => segments === 0);
}
