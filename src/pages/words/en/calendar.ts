/** Wording of the calendar of next visits. */
export const calendar = {
  title: (practice: string) => `${practice}: hoof visits`,
  visit: (horse: string) => `Hooves of ${horse}`,
  last: (date: string) => `Last visit ${date}.`,
}
