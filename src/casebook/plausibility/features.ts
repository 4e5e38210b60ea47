/** Followed features along the visits: they move down with the wall, at the wall's pace, and keep their name. */
import { daysBetween, type PlainDate } from '../../hoof/dates.ts'
import { distanceSd } from '../../hoof/growth.ts'
import type { LengthUnit } from '../../hoof/units.ts'
import type { FollowedFeature } from '../model.ts'
import type { PlacedVisit } from '../visit-file.ts'
import { nearest, quote } from '../words.ts'
import { inWords } from './history.ts'

/** As for walls: more than any published growth. mm a day. */
const mostGrowthPerDay = 0.6
const noise = 3 * Math.SQRT2 * distanceSd

interface Sighting {
  readonly date: PlainDate
  readonly distance: number
}

export function checkFeatures(visits: readonly PlacedVisit[], units: LengthUnit): void {
  const followed = new Map<string, Map<string, Sighting>>()
  for (const placed of visits) {
    const seenNow = new Set(placed.visit.growOut.map(keyOf))
    for (const { feature, range, whatRange } of placed.features) {
      const spotKey = `${feature.foot} ${feature.place}`
      const here = followed.get(spotKey) ?? new Map<string, Sighting>()
      followed.set(spotKey, here)
      const earlier = here.get(feature.what)
      const name = `${quote(feature.what)} at ${feature.foot}, ${feature.place},`
      if (earlier) {
        const days = daysBetween(earlier.date, placed.visit.date)
        const moved = feature.distance - earlier.distance
        const say = (mm: number) => inWords(mm, 'length', units)
        if (moved < -noise || moved > mostGrowthPerDay * days + noise) {
          placed.report.warning(
            'feature-jump',
            range,
            `${name} is ${say(feature.distance)} from the hairline; on ${earlier.date} it was ${say(earlier.distance)}. ${
              moved < 0 ? 'Horn only grows down.' : `No hoof grows ${say(moved)} in ${days} days.`
            }`,
            { expected: `${say(earlier.distance)} to ${say(earlier.distance + mostGrowthPerDay * days)}` },
          )
        }
      } else {
        const unseen = [...here.keys()].filter((what) => !seenNow.has(keyOf({ ...feature, what })))
        const meant = nearest(feature.what, unseen)
        if (meant) {
          placed.report.warning(
            'feature-name',
            range,
            `${name} is new; an earlier visit followed ${quote(meant)} there, and only the same name is the same feature.`,
            {
              expected: 'the name of the first visit',
              fix: { words: meant, edits: [{ start: whatRange.start, end: whatRange.end, text: meant }] },
            },
          )
        }
      }
      here.set(feature.what, { date: placed.visit.date, distance: feature.distance })
    }
  }
}

const keyOf = (feature: FollowedFeature): string => `${feature.foot} ${feature.place} ${feature.what}`
