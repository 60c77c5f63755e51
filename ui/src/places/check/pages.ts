// Open items in pages that a person reads in a minute.
const PAGE = 9;

/** Returns the page, from 0, of the item at an index; the first page if there is no such item. */
export function pageOf(index: number): number {
  return Math.floor(Math.max(index, 0) / PAGE);
}

/** Returns the last page, from 0, of a count of items. */
export function lastPage(count: number): number {
  return Math.max(0, Math.ceil(count / PAGE) - 1);
}

/** Returns the items of one page. */
export function slice<Item>(items: Item[], page: number): Item[] {
  return items.slice(page * PAGE, (page + 1) * PAGE);
}
