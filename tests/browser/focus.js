/**
 * What is wrong with how the focus is shown, run in the page: a line round it of two pixels and more,
 * in sight and under nothing. Empty: nothing is.
 */
export function focusSeen(control) {
  const drawn = [
    getComputedStyle(control),
    getComputedStyle(control, '::after'),
    ...(control.closest('label') ? [getComputedStyle(control.closest('label'))] : []),
  ].some(
    ({ outlineStyle, outlineWidth }) => outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2,
  );
  if (!drawn) return 'no line round it';
  const { x, y, width, height } = control.getBoundingClientRect();
  const top = document.elementFromPoint(x + width / 2, y + height / 2);
  const over = top && !control.contains(top) && !control.closest('label')?.contains(top);
  return top === null || over ? `out of sight or under ${top?.outerHTML.slice(0, 80)}` : '';
}
