import { inBand } from '../../hoof/bands.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { Trend } from '../../trend/assessment.ts'
import { lineOn } from '../../trend/trends.ts'

/** Whether the line through all readings began outside the band: what lay in it from the first has not reached it. */
export const cameFromOutside = ({
  target,
  fit,
  first,
}: Pick<Trend<Foot | 'all'>, 'target' | 'fit' | 'first'>): boolean =>
  target !== null && fit !== null && !inBand(lineOn(fit, first.date).value, target)
