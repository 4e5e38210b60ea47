/** An element that the page is known to have. */
export const byId = <T extends HTMLElement>(id: string, kind: new () => T): T => {
  const found = document.getElementById(id)
  if (!(found instanceof kind)) throw new Error(`the page has no ${id}`)
  return found
}
