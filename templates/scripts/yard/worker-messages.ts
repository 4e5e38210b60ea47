/** What the page says to the worker that waits: take the place of the old one. */
export const takeNow = 'take now'
