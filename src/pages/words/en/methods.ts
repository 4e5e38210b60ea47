/** How the numbers are worked out, in short, and where the methods are known to fall short. Formulas stay as they are. */

export const methods = {
  trend: {
    name: 'Trend, from both stages',
    formula: 'after the trim = a + b t + u + e; next arrival = the same + g D + s + w + e',
    text: 'One line for each foot and measure. Readings after the trim lie about it by what a trim leaves (u) and by reading error (e). Readings at the next arrival tell of the same line, with the growth (g) and wear (w) of the days (D) between; of walls also with the season (s), as all walls of the practice show it. The reading on arrival at the first visit is not used: another hand left it. Gauge and photograph are never put into one line.',
  },
  'practice-teaches': {
    name: 'What the practice teaches',
    formula: 'restricted maximum likelihood over all horses, with the scatter of the literature as prior',
    text: 'How well you read, what your trims leave and how much wear differs is learned from all your horses, for each measure apart. With few readings the literature counts more, with many your own. It is made new once a month. Feet differ in scatter, so each foot’s own scatter counts as well. Where visits say who read, and two people have read enough, each person’s readings count by how they repeat.',
  },
  'left-out': {
    name: 'Readings left out',
    formula: 'more than 3.5 standard errors from the line',
    text: 'At most two readings of a course are left out as slips. The page names them.',
  },
  'smallest-real-change': {
    name: 'Smallest real change',
    formula: 'limit = t × √2 × s',
    text: 'Two readings of the same thing differ by chance. A difference below this limit is within error. s is the scatter of one reading about the line, t is Student’s t for 95 %.',
  },
  verdict: {
    name: 'Verdict: which way it goes',
    formula: 'moves: 0 outside the slope’s 97 % interval; else equivalence on its 90 % interval',
    text: 'Improving or worsening: the line surely moves, toward the target or away from it. Rising or falling: it surely moves, and there is no target, or it is reached. Steady: every change that matters is ruled out, both ways. Not getting worse, not getting better: ruled out one way. All else, and all under two and a half months, is too early to tell.',
  },
  position: {
    name: 'Position: where it is',
    formula: 'probability of the level lying in the target band',
    text: 'On target from 80 % on, off target up to 20 %, near target between the two. A foot that waits for a vet is not called on target.',
  },
  'clear-moves': {
    name: 'Lists of what clearly moves',
    formula: 'p(k) ≤ k / m × 10 %',
    text: 'Among many courses some seem to move by chance. A list of movements holds so few that about one in ten of them is expected to be chance, over each horse. It goes by slopes and never by first against last.',
  },
  pace: {
    name: 'Changed pace',
    formula: 'from 8 trims on: the first half against the second, 99 %',
    text: 'Feet do not always move in straight lines. Where the two halves differ the page says so. Nothing else is changed by it.',
  },
  forecast: {
    name: 'Target date',
    formula: '(a + b t − T)² = t² Var(a + b t)',
    text: 'The day on which the line enters the target at its nearest edge T, with its 95 % interval. The slope is first drawn toward 0 by as much as slopes of this practice deserve. A day is given only if the slope is still sure then. Else the page names the first month in which the target could be reached at all. Nothing is said beyond 18 months. A day that has come is no forecast any more: read it.',
  },
  'growth-and-trim': {
    name: 'Growth and trim',
    formula: 'trim = after − on arrival; growth = next arrival − after, a month',
    text: 'A hoof grows between visits and is shortened at them. The two are kept apart. Growth is what is left after wear, for walls alone. Where a wall is read at one stage only, the trims hide its growth and no rate is given.',
  },
  'grow-out': {
    name: 'Growing out',
    formula: 'day = mean day of the sightings + (wall length − mean distance) / rate',
    text: 'All horn of one wall grows at one rate: that of the practice, sharpened by what this wall has shown. The 95 % range carries the errors of distances, wall and rate, and a season of 15 % either way. “Grown out” is said only when the whole range is past.',
  },
  plan: {
    name: 'Staged plan',
    formula: 'trims = excess over the limit / most at one trim',
    // With its limits: `planText`.
    text: '',
  },
  'side-view': {
    name: 'Side view',
    formula: 'toe hairline = (Lt cos A, Lt sin A); heel hairline = (B + Lh cos H, Lh sin H)',
    text: 'From toe angle A, toe length Lt, heel angle H, mean heel length Lh and bearing length B. Where the coronet angle was read too, the two are compared. Lowering one end by p turns the ground plane by atan(p / B).',
  },
}

/** Figures of the simulations that the methods were chosen by. */
export const limits: readonly string[] = [
  'Readings that err the same way for a while, such as a gauge that is off for a season: at ten readings the 95 % intervals of slopes hold the truth in only 83 of 100 simulated courses (correlation 0.6).',
  'Growth that swings by 30 % with the season: the ranges of growing out hold the truth in only 84 of 100, in the worst cases 71. At 15 % and without a season they hold it in 92 or more.',
  'Of a season only the growth of walls is known. Any other measure that follows the grass may be told to rise or fall.',
  'Past forecasts are judged with what the practice has taught up to today, which the day itself could not know.',
  'A straight line is fitted. Where a foot moves in a curve, the dates are early or late.',
]
